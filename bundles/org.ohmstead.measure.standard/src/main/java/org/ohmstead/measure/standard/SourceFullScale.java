// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** How many volts a bench's source gave at full scale, as the log keeps it among the settings of the bench. */
public final class SourceFullScale {
    /** What our benches call it: the simulated one, the sound card, the instruments on a line. */
    private static final List<String> SETTINGS = List.of("sourceVolts", "outputVolts", "generator.fullOutputVoltsRms");

    private SourceFullScale() {}

    /** Returns the volts RMS of a sine at full scale that figures were found with; empty when their bench does not tell it. */
    public static OptionalDouble voltsRms(MeasuredFigures figures) {
        Map<String, String> settings = figures.driver().settings();
        for (String setting : SETTINGS) {
            String text = settings.get(setting);
            if (text != null) {
                return positive(text);
            }
        }
        return OptionalDouble.empty();
    }

    private static OptionalDouble positive(String text) {
        try {
            double volts = QuantityParser.parse(text, Unit.VOLT).value();
            return volts > 0 ? OptionalDouble.of(volts) : OptionalDouble.empty();
        } catch (QuantityException unreadable) {
            // A setting of somebody else's bench that only has the same name.
            return OptionalDouble.empty();
        }
    }
}
