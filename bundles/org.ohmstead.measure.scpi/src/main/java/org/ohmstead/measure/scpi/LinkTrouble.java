// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import org.ohmstead.measure.MeasurementException;

/** The sentences about a link to an instrument. */
record LinkTrouble(ScpiAddress address) {
    private static final String CHECK =
            "Check that the instrument is on, that its network cable is in and that nothing else holds its only link.";

    MeasurementException notMade(IOException failure) {
        return new MeasurementException(
                "No link to the instrument at " + address + " could be made (" + reason(failure)
                        + "). Check its address and port. " + CHECK,
                failure);
    }

    MeasurementException notClosed(IOException failure) {
        return new MeasurementException(
                "The link to the instrument at " + address + " did not close (" + reason(failure)
                        + "). Switch the instrument off and on if it does not answer any more.",
                failure);
    }

    MeasurementException closed() {
        return new MeasurementException(
                "The link to the instrument at " + address + " was closed. Open the bench again to go on measuring.");
    }

    MeasurementException droppedAfter(String command, IOException failure) {
        return new MeasurementException(
                "The instrument at " + address + " dropped the link (" + reason(failure) + ") after \"" + command
                        + "\", which it may or may not have got. " + CHECK,
                failure);
    }

    /** Says that commands may be lost, since the link was not the same before and after them. */
    MeasurementException madeAnewWithin(String action) {
        return new MeasurementException("The instrument at " + address + " dropped the link within [" + action
                + "], so that it may not have got all of it. " + CHECK);
    }

    MeasurementException switchedOffAndOn() {
        return new MeasurementException("The instrument at " + address
                + " was switched off and on meanwhile, so its settings are lost. Open the bench again to go on.");
    }

    MeasurementException notAllowed(String command) {
        return new MeasurementException("The bench was made safe before \"" + command
                + "\" was sent to the instrument at " + address + ". Set the supply volts to go on.");
    }

    MeasurementException failed(String query, AnswerFault fault) {
        return new MeasurementException(
                "The instrument at " + address + " " + fault.getMessage() + " after \"" + query + "\". "
                        + fault.remedy(),
                fault);
    }

    static AnswerFault lost(IOException failure) {
        return new AnswerFault(AnswerFault.After.LOST, "dropped the link (" + reason(failure) + ")", CHECK, failure);
    }

    private static String reason(IOException failure) {
        return failure.getMessage() == null ? failure.getClass().getSimpleName() : Answer.shown(failure.getMessage());
    }
}
