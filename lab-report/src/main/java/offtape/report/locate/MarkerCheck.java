package offtape.report.locate;

import offtape.core.audio.AudioSource;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;

/** Whether the first marker of a programme is heard where a match says it should be. */
final class MarkerCheck {

    private final Programme programme;
    private final AudioSource recording;

    MarkerCheck(Programme programme, AudioSource recording) {
        this.programme = programme;
        this.recording = recording;
    }

    /** Whether it is heard; markers in the later half of a programme do not tell a beginning. */
    boolean heard(CoarseSearch.Match match) {
        CueSheet sheet = programme.sheet();
        double length = sheet.seconds(sheet.frames());
        TimeMap map = TimeMap.straight(match.offsetSeconds(), match.stretch(), length);
        return sheet.cues(Cue.Marker.class)
                .filter(m -> m.startFrame() < sheet.frames() / 2)
                .findFirst()
                .filter(
                        m ->
                                new AnchorSearch(programme.audio(), recording, map)
                                        .hears(
                                                sheet.seconds(m.startFrame()),
                                                sheet.seconds(m.frames()),
                                                Placement.MARKER_TOP_HZ,
                                                Placement.MARKER_LIKE))
                .isPresent();
    }
}
