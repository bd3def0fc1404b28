// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import org.ohmstead.measure.MeasurementException;

/** Finds out whether an instrument was switched off and on behind a link that had to be made anew, so that its settings are lost. */
final class PowerWatch {
    /** The bit of the standard event status register that tells of power (IEEE 488.2, 11.5.1.1). */
    private static final int POWER_ON = 128;

    private final ScpiConnection connection;
    private int knownLink;
    private boolean lost;

    PowerWatch(ScpiConnection connection) {
        this.connection = connection;
    }

    /** Takes the instrument's state as it is; the event must have been cleared. */
    void begin() throws MeasurementException, InterruptedException {
        knownLink = connection.linkNumber();
        lost = false;
    }

    /** Returns the number of the link, made anew if need be. */
    int check() throws MeasurementException, InterruptedException {
        int link = connection.linkNumber();
        if (link != knownLink && knownLink != 0) {
            int events = connection.ask("*ESR?", Instrument.USUAL_WAIT, false, from -> Answer.whole(from.line()));
            // Kept, since reading it clears it and several roles may share the link.
            lost |= (events & POWER_ON) != 0;
        }
        knownLink = link;
        if (lost) {
            throw connection.trouble().switchedOffAndOn();
        }
        return link;
    }
}
