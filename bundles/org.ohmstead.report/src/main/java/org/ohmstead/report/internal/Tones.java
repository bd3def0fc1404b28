// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.plot.Palette;

/** Colours and markers that mean the same in every chart of a sheet: one for each nominal load, one for each supply voltage. */
final class Tones {
    private final List<Double> loadsOhms;
    private final List<Double> suppliesVolts;

    /** Gives out the tones from the highest load and the highest voltage downwards; beyond the palette's end they begin anew. */
    Tones(Collection<Double> loadsOhms, Collection<Double> suppliesVolts) {
        this.loadsOhms = falling(loadsOhms);
        this.suppliesVolts = falling(suppliesVolts);
    }

    private static List<Double> falling(Collection<Double> values) {
        return values.stream().distinct().sorted(Comparator.reverseOrder()).toList();
    }

    int ofLoad(double nominalOhms) {
        return tone(loadsOhms, "nominalOhms", nominalOhms);
    }

    int ofSupply(double aimedVolts) {
        return tone(suppliesVolts, "aimedVolts", aimedVolts);
    }

    private static int tone(List<Double> values, String name, double value) {
        int index = values.indexOf(value);
        if (index < 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be one of " + values);
        }
        return index % Palette.TONES;
    }
}
