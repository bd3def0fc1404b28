// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** What goes wrong with measurements, which the log keeps in English and the technician reads in a language of their own. */
final class Faults {
    private static final Messages TEXTS = Messages.of(Faults.class);

    private Faults() {}

    /** Makes a sentence of what stands under "fault." in the texts. */
    static Said said(String key, Object... arguments) {
        return Said.of(TEXTS, "fault." + key, arguments);
    }

    static MeasurementException of(String key, Object... arguments) {
        return MeasurementException.of(said(key, arguments));
    }

    static MeasurementException because(Exception cause, String key, Object... arguments) {
        return MeasurementException.of(said(key, arguments), cause);
    }

    /** Passes on what something says of itself in whole sentences. */
    static MeasurementException passedOn(Exception cause) {
        return MeasurementException.of(Said.by(cause), cause);
    }

    static EvaluationException evaluation(String key, Object... arguments) {
        return new EvaluationException(said(key, arguments));
    }
}
