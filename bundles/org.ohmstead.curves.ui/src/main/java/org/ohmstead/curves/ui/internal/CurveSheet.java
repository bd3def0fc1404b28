// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.PowerCurve;
import org.ohmstead.curves.SquareLawFallback;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** What the curves say: power at the customary supply volts, and at the cursor. */
final class CurveSheet {
    /** Customary voltages of 12 V systems: a battery at rest, the same fully charged, and two with the engine running. */
    static final List<Double> CUSTOMARY_VOLTS = List.of(12.0, 12.6, 13.8, 14.4);

    /** Which column holds the power at the cursor. */
    static final int CURSOR = 2 + CUSTOMARY_VOLTS.size();

    /** A supply is seldom set closer than this, so volts so near to the readings count as measured. */
    private static final double NEGLIGIBLE_VOLTS = 0.05;

    private CurveSheet() {}

    /**
     * Returns the table.
     *
     * @param curves those in sight
     * @param cursorVolts where the chart's cursor stands
     */
    static Sheet of(List<LoadCurve> curves, OptionalDouble cursorVolts) {
        List<Sheet.Header> headers = new ArrayList<>();
        headers.add(new Sheet.Header("Load (\u03a9)", true, "The value that the load stands for."));
        headers.add(new Sheet.Header("Ch.", false, "Which channel's curve."));
        String hint = "Power in watts with its " + Coverage.adjective().toLowerCase(Locale.ROOT) + " uncertainty ("
                + Coverage.words() + "); in parentheses where no reading reaches.";
        for (double supplyVolts : CUSTOMARY_VOLTS) {
            headers.add(new Sheet.Header("W at " + Figures.fixed(supplyVolts, 1) + " V", true, hint));
        }
        String cursor = cursorVolts.isPresent()
                ? "W at " + Figures.fixed(cursorVolts.getAsDouble(), 2) + " V"
                : "W at the cursor";
        headers.add(new Sheet.Header(cursor, true, "The same at the supply volts under the chart's cursor."));
        headers.add(new Sheet.Header("What it says", false, "How the power depends on the supply."));
        return new Sheet(
                headers, curves.stream().map(curve -> row(curve, cursorVolts)).toList());
    }

    private static Sheet.Row row(LoadCurve curve, OptionalDouble cursorVolts) {
        List<Sheet.Cell> cells = new ArrayList<>();
        cells.add(Sheet.Cell.of(Numbers.shown(curve.nominalLoadOhms())));
        cells.add(Sheet.Cell.of(curve.channel()));
        CUSTOMARY_VOLTS.forEach(supplyVolts -> cells.add(power(curve, supplyVolts)));
        cells.add(
                cursorVolts.isPresent() && cursorVolts.getAsDouble() > 0
                        ? power(curve, cursorVolts.getAsDouble())
                        : Sheet.Cell.of(""));
        String words = Numbers.inSentence(curve.curve().describe());
        cells.add(new Sheet.Cell(words, words));
        return new Sheet.Row(cells);
    }

    /** Returns the power of a curve at some supply volts, marked where no reading reaches. */
    static Sheet.Cell power(LoadCurve curve, double supplyVolts) {
        Estimate power = curve.powerAt(supplyVolts);
        double half = Coverage.expanded(power.standardUncertainty());
        String text = Figures.stated(power.value(), half).text();
        String hover = text + " W (" + Coverage.words() + ")";
        PowerCurve fitted = curve.curve();
        if (fitted instanceof SquareLawFallback) {
            return new Sheet.Cell("\u2248\u00a0" + text, hover + "; " + SquareLawFallback.NOTE + ".");
        }
        double outside = fitted.predict(supplyVolts).extrapolationVolts();
        if (outside > NEGLIGIBLE_VOLTS) {
            return new Sheet.Cell(
                    "(" + text + ")",
                    hover + "; " + Figures.fixed(outside, 2) + " V outside the readings, so less sure than it looks.");
        }
        return new Sheet.Cell(text, hover);
    }
}
