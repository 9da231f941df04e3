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

    /** Sentences with lists, phrases and other sentences in them, as results hold them. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "The curve can be explained in more than one way: spacing 0.61 µm, gap 2.1 µm; or"
                        + " thickness 3.0 µm, equalisation (3180 µs on the tape and 120 µs in"
                        + " replay); or upper edge of an amplifier 15.5 kHz."
                        + "|Die Kurve lässt sich auf mehr als eine Weise erklären: Abstand 0,61 µm,"
                        + " Spalt 2,1 µm; oder Schichtdicke 3,0 µm, Entzerrung (3180 µs auf dem Band"
                        + " und 120 µs bei der Wiedergabe); oder obere Grenze eines Verstärkers"
                        + " 15,5 kHz.",
                "A space between tape and head (dirt, worn or slack tape guidance) and a wide gap or"
                        + " a head that stands askew look alike above 5.5 kHz on this recording."
                        + "|Ein Abstand zwischen Band und Kopf (Schmutz, abgenutzte oder lockere"
                        + " Bandführung) und ein breiter Spalt oder ein schief stehender Kopf sehen"
                        + " in dieser Aufnahme oberhalb von 5,5 kHz gleich aus.",
                "A head that stands 3.1 ± 0.2 arc min askew takes 1.5 dB at 10 kHz."
                        + "|Ein um 3,1 ± 0,2 Winkelminuten schief stehender Kopf nimmt bei 10 kHz"
                        + " 1,5 dB weg.",
                "Tones that do not belong to the list: 1012.3 Hz at 5.0 s, 200 Hz at 7.5 s and more."
                        + "|Töne, die nicht zur Liste gehören: 1012,3 Hz bei 5,0 s, 200 Hz bei 7,5 s"
                        + " und weitere.",
                "At full scale, and so perhaps clipped: tone 1 (1000 Hz), tone 4 (315 Hz). Record at"
                        + " a lower level."
                        + "|An der Aussteuerungsgrenze und damit vielleicht übersteuert: Ton 1"
                        + " (1000 Hz), Ton 4 (315 Hz). Mit niedrigerem Pegel aufzeichnen.",
                "At 1.25 s of the recording 5.5 ms of sound are missing. Between 2.5 s and 3.5 s of"
                        + " the recording 4.0 ms were added. There are 2 more such places."
                        + "|Bei 1,25 s der Aufnahme fehlen 5,5 ms Ton. Zwischen 2,5 s und 3,5 s der"
                        + " Aufnahme kamen 4,0 ms hinzu. Es gibt noch 2 weitere solche Stellen.",
                "No take. 2.wav sounds like the programme, but none of its markers is in it. Record"
                        + " the whole programme again, from before its first marker to after its"
                        + " last."
                        + "|No take. 2.wav klingt wie das Programm, enthält aber keine seiner"
                        + " Marken. Das ganze Programm erneut aufzeichnen, von vor seiner ersten"
                        + " Marke bis nach seiner letzten.",
                "/r/take 2.wav is damaged at 12.5 s: the checksum of a block does not agree. Export"
                        + " or copy the recording again."
                        + "|/r/take 2.wav ist bei 12,5 s beschädigt: die Prüfsumme eines Blocks"
                        + " stimmt nicht. Die Aufnahme erneut exportieren oder kopieren.",
                "a.wav is empty. Export or copy the recording again."
                        + "|a.wav ist leer. Die Aufnahme erneut exportieren oder kopieren.",
                "a.wav cannot be used: its header states 70 channels; up to 64 are read. Export the"
                        + " recording as linear WAV (16 or 24 bit, or float)."
                        + "|a.wav lässt sich nicht verwenden: ihr Kopf nennt 70 Kanäle; gelesen"
                        + " werden bis zu 64. Die Aufnahme als lineare WAV-Datei exportieren (16"
                        + " oder 24 Bit oder Gleitkomma).",
                "out/a.html cannot be written: the disk is full; make room or choose another disk."
                        + " What was made is kept in out/a-kept."
                        + "|out/a.html kann nicht geschrieben werden: der Datenträger ist voll; Platz"
                        + " schaffen oder einen anderen Datenträger wählen. Das Erzeugte ist"
                        + " aufbewahrt in out/a-kept.",
                "m.json: heads: \"azimuthArcMinutes\" is 130.5; it must lie between -120 and 120"
                        + " arc minutes."
                        + "|m.json: heads: \"azimuthArcMinutes\" ist 130,5, muss aber zwischen -120"
                        + " und 120 Winkelminuten liegen.",
                "m.json: the member \"hed\" is not known. Perhaps \"heads\" is meant. Known here:"
                        + " bias, heads."
                        + "|m.json: Das Element \"hed\" ist nicht bekannt. Vielleicht ist \"heads\""
                        + " gemeint. Hier bekannt: bias, heads.",
                "p/programme.json, cue \"x\", step 2: levelDb must lie between -140.0 and 80.0."
                        + " Correct the cue sheet or write the programme again with"
                        + " \"offtape prepare\"."
                        + "|p/programme.json, Abschnitt \"x\", Stufe 2: levelDb muss zwischen -140,0"
                        + " und 80,0 liegen. Den Zeitplan berichtigen oder das Programm mit"
                        + " \"offtape prepare\" neu schreiben.",
                "r.json is larger than the results of a session can be (64 MiB)."
                        + "|r.json ist größer als zulässig (die Ergebnisse einer Sitzung: höchstens"
                        + " 64 MiB).",
                "Another run is just writing out/a. Wait until it has finished or choose another"
                        + " name."
                        + "|Ein anderer Lauf schreibt gerade out/a. Warten, bis er fertig ist, oder"
                        + " einen anderen Namen wählen.",
                "take-up reel, 2nd harmonic|Aufwickelspule, 2. Harmonische",
                "a.wav has 8 channels; there is no channel 9."
                        + "|a.wav hat 8 Kanäle; es gibt keinen Kanal 9.",
                "the mark before it did not come back on channel 2; check that the machine is in"
                        + " record and its replay head is heard, or allow more delay with --tail."
                        + "|die Marke davor kam auf Kanal 2 nicht zurück; prüfen, ob die Maschine"
                        + " aufnimmt und ihr Wiedergabekopf zu hören ist, oder mit --tail mehr"
                        + " Verzögerung zulassen.",
                "The left channel is dead, so there is nothing to compare."
                        + "|Der Kanal links ist tot, also gibt es nichts zu vergleichen."
            })
    void whatIsFilledInIsSaidInGermanToo(String english, String german) {
        assertEquals(german, GERMAN.of(english));
    }
}
