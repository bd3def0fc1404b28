// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** What goes wrong with benches, which the log keeps in English and the technician reads in a language of their own. */
public final class Faults {
    private static final Messages TEXTS = Messages.of(Faults.class);

    private Faults() {}

    /** Makes a failure of what stands under "problem." in the texts. */
    public static MeasurementException of(String key, Object... arguments) {
        return because(null, key, arguments);
    }

    /** Makes a failure and says where it comes from. */
    public static MeasurementException because(Exception cause, String key, Object... arguments) {
        return MeasurementException.of(Said.of(TEXTS, "problem." + key, arguments), cause);
    }
}
