package offtape.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.text.Language;
import offtape.core.text.Translation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sentences of results with others in them or behind them, said in German. */
class ComposedSentencesTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    @Test
    void figuresThatAnInterfaceLimitsAreToldOneByOne() {
        assertEquals(
                "Das Interface selbst begrenzt, was sich über die Maschine sagen lässt:"
                        + " Frequenzgang, 40 Hz bis 16 kHz, am weitesten von 0 dB, links (-3,5 dB);"
                        + " Rauschen, A-bewertet, rechts (sein Anteil ist 60 % des Gehörten);"
                        + " Brummen, 50 Hz, links (sein Anteil ist 71 % des Gehörten);"
                        + " K3 von 315 Hz bei +0 dB, rechts (sein Anteil ist 40 % des Gehörten);"
                        + " Übersprechen bei 1 kHz, links nach rechts (sein Anteil ist 35 % des"
                        + " Gehörten). Gegen sein Rauschen den Pegel an seinem Eingang erhöhen,"
                        + " gegen seine Verzerrung ihn senken oder ein besseres verwenden.",
                GERMAN.of(
                        "The interface itself limits what can be told of the machine:"
                                + " Response, 40 Hz to 16 kHz, farthest from 0 dB, left (-3.5 dB);"
                                + " Noise, A-weighted, right (its own is 60 % of what was heard);"
                                + " Hum, 50 Hz, left (its own is 71 % of what was heard);"
                                + " K3 of 315 Hz at +0 dB, right (its own is 40 % of what was"
                                + " heard); Crosstalk at 1 kHz, left into right (its own is 35 % of"
                                + " what was heard). Against its noise raise the level at its"
                                + " input, against its distortion lower it, or use a better"
                                + " one."));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
        take 2.wav has no readings of wow and flutter: The tone is too short: wow and flutter needs 5 s or more. | take 2.wav hat keine Messwerte der Gleichlaufschwankungen: Der Ton ist zu kurz: Gleichlaufschwankungen brauchen 5 s oder mehr.
        The recording holds the programme 2 times: from 1.5 s whole, from 63.0 s to 80.5 s in part. The one from 1.5 s was measured: the last whole one, or the longest if none is whole. | Die Aufnahme enthält das Programm 2-mal: ab 1,5 s ganz, von 63,0 s bis 80,5 s zum Teil. Gemessen wurde das ab 1,5 s: das letzte ganze oder, wenn keines ganz ist, das längste.
        The capture mode was not said and taken for reference-tape from the recording (it runs +1.250 % off, more than one machine differs between two passes). If it is another one, say so with --mode. | Die Aufnahmeart wurde nicht angegeben und nach der Aufnahme für reference-tape gehalten (sie weicht im Tempo um +1,250 % ab, mehr als sich eine Maschine zwischen zwei Durchgängen unterscheidet). Wenn es eine andere ist, sie mit --mode angeben.
        The speed tone wavers as on tape: this is no loopback of the interface alone. Check what was said with --mode. | Der Geschwindigkeitston schwankt wie auf Band: Dies ist keine Schleife des Interface allein. Prüfen, was mit --mode angegeben wurde.
        The reference tone comes back at another level than in the loopback (+3.5 dB left, -4.0 dB right). If a gain of the interface was changed in between, make the loopback again; the uncertainty of the noise allows for it. | Der Bezugston kommt mit einem anderen Pegel zurück als in der Schleife (+3,5 dB links, -4,0 dB rechts). Wenn dazwischen eine Verstärkung des Interface geändert wurde, die Schleife neu aufnehmen; die Unsicherheit des Rauschens trägt dem Rechnung.
        The left channel is clipped in 3 places, first at 2.25 s, at -0.1 dBFS: the converter or a stage before it is overloaded, and its distortion is in the figures. Lower the input gain. | Der Kanal links ist an 3 Stellen abgeschnitten, zuerst bei 2,25 s, bei -0,1 dBFS: Der Wandler oder eine Stufe davor ist übersteuert, und ihre Verzerrung steckt in den Werten. Die Eingangsverstärkung verringern.
        The delay of the programme less the interface's own. The wavering of the return agrees and makes it sharper. | Die Verzögerung des Programms abzüglich der des Interface selbst. Die Schwankung der Rückaufnahme stimmt damit überein und macht es genauer.
        """)
    void sentencesThatHoldOthersOrFollowThemAreToldWhole(String english, String german) {
        assertEquals(german, GERMAN.of(english));
    }
}
