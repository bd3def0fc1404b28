// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.PowerCurve;
import org.ohmstead.curves.SquareLawFallback;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** What the curves say: power at the customary supply volts, and at the cursor. */
final class CurveSheet {
    private static final Messages TEXTS = Messages.of(CurveSheet.class);

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
        headers.add(new Sheet.Header(TEXTS.text("curves.load"), true, TEXTS.text("curves.loadHint")));
        headers.add(new Sheet.Header(TEXTS.text("curves.channel"), false, TEXTS.text("curves.channelHint")));
        String hint = TEXTS.text("curves.powerHint", Words.uncertainty());
        for (double supplyVolts : CUSTOMARY_VOLTS) {
            headers.add(new Sheet.Header(TEXTS.text("curves.wattsAt", Figures.fixed(supplyVolts, 1)), true, hint));
        }
        String cursor = cursorVolts.isPresent()
                ? TEXTS.text("curves.wattsAt", Figures.fixed(cursorVolts.getAsDouble(), 2))
                : TEXTS.text("curves.wattsAtCursor");
        headers.add(new Sheet.Header(cursor, true, TEXTS.text("curves.cursorHint")));
        headers.add(new Sheet.Header(TEXTS.text("curves.says"), false, TEXTS.text("curves.saysHint")));
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
        String coverage = Coverage.words();
        PowerCurve fitted = curve.curve();
        if (fitted instanceof SquareLawFallback) {
            return new Sheet.Cell(
                    "\u2248\u00a0" + text, TEXTS.text("curves.fallback", text, coverage, SquareLawFallback.note()));
        }
        double outside = fitted.predict(supplyVolts).extrapolationVolts();
        if (outside > NEGLIGIBLE_VOLTS) {
            return new Sheet.Cell(
                    "(" + text + ")", TEXTS.text("curves.outside", text, coverage, Figures.fixed(outside, 2)));
        }
        return new Sheet.Cell(text, TEXTS.text("curves.power", text, coverage));
    }
}
