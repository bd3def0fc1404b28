// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.util.List;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** The sentences about a link to an instrument. */
record LinkTrouble(ScpiAddress address) {
    private static final Messages TEXTS = Messages.of(LinkTrouble.class);

    MeasurementException notMade(IOException failure) {
        return MeasurementException.of(() -> TEXTS.text("trouble.notMade", address, reason(failure), check()), failure);
    }

    MeasurementException notClosed(IOException failure) {
        return MeasurementException.of(() -> TEXTS.text("trouble.notClosed", address, reason(failure)), failure);
    }

    MeasurementException manyErrors(List<ScpiError> errors, String query) {
        return MeasurementException.of(
                () -> TEXTS.text("trouble.manyErrors", address, String.valueOf(errors.size()), query, errors.get(0)));
    }

    static String closedMeanwhile() {
        return TEXTS.text("link.reason.closed");
    }

    MeasurementException closed() {
        return MeasurementException.of(() -> TEXTS.text("trouble.closed", address));
    }

    MeasurementException droppedAfter(String command, IOException failure) {
        return MeasurementException.of(
                () -> TEXTS.text("trouble.dropped", address, reason(failure), command, check()), failure);
    }

    /** Says that commands may be lost, since the link was not the same before and after them. */
    MeasurementException madeAnewWithin(String action) {
        return MeasurementException.of(() -> TEXTS.text("trouble.droppedWithin", address, action, check()));
    }

    MeasurementException switchedOffAndOn() {
        return MeasurementException.of(() -> TEXTS.text("trouble.offAndOn", address));
    }

    MeasurementException notAllowed(String command) {
        return MeasurementException.of(() -> TEXTS.text("trouble.notAllowed", command, address));
    }

    MeasurementException failed(String query, AnswerFault fault) {
        return MeasurementException.of(
                () -> TEXTS.text("trouble.failed", address, fault.what(), query, fault.remedy()), fault);
    }

    static AnswerFault lost(IOException failure) {
        return new AnswerFault(
                AnswerFault.After.LOST, () -> TEXTS.text("trouble.lost", reason(failure)), LinkTrouble::check, failure);
    }

    private static String check() {
        return TEXTS.text("trouble.check");
    }

    private static String reason(IOException failure) {
        return failure.getMessage() == null
                ? failure.getClass().getSimpleName()
                : Answer.shown(Said.by(failure).text());
    }
}
