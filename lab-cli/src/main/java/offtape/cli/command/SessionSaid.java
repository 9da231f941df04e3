package offtape.cli.command;

import offtape.cli.batch.BatchEntry;
import offtape.core.standard.TrackSpacing;
import offtape.core.transport.TransportDescription;

/**
 * What is said of a session; each may be null.
 *
 * @param machineName the machine, as the user calls it
 * @param tape the tape, as the user calls it
 * @param note a remark of the user
 * @param tapeSpeedMmPerS nominal tape speed, mm/s
 * @param tracks how far the tracks lie apart
 * @param transport dimensions of the transport
 */
record SessionSaid(
        String machineName,
        String tape,
        String note,
        Double tapeSpeedMmPerS,
        TrackSpacing tracks,
        TransportDescription transport) {

    /** The same with what a list says of one return in place of what holds for all. */
    SessionSaid with(BatchEntry entry) {
        return new SessionSaid(
                entry.machineName() == null ? machineName : entry.machineName(),
                entry.tape() == null ? tape : entry.tape(),
                entry.note() == null ? note : entry.note(),
                entry.tapeSpeed() == null ? tapeSpeedMmPerS : (Double) entry.tapeSpeed().mmPerS(),
                tracks,
                transport);
    }

    /** The speed, or another if none is said. */
    Double tapeSpeedMmPerS(Double otherwise) {
        return tapeSpeedMmPerS == null ? otherwise : tapeSpeedMmPerS;
    }
}
