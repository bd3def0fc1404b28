// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.SquareLawFallback;
import org.ohmstead.metrology.Estimate;

/** Power from the fitted curves at the customary supply voltages. */
final class CurveTables {
    /** Customary voltages of 12 V systems: a battery at rest, the same at full charge, and two with the engine running. */
    static final List<Double> CUSTOMARY_VOLTS = List.of(12.0, 12.6, 13.8, 14.4);

    /** A supply is seldom set closer than this, so a point so near to a customary voltage stands for it. */
    private static final double NEGLIGIBLE_VOLTS = 0.05;

    private final Evidence evidence;
    private final Speech speech;

    CurveTables(Evidence evidence) {
        this.evidence = evidence;
        this.speech = evidence.speech();
    }

    /** Returns one table with a part for each group of curves. */
    Table normalised(List<CurveGroup> groups) {
        Table.Builder table = Table.titled("").brief(speech.text("load")).text(speech.text("channel"));
        CUSTOMARY_VOLTS.forEach(volts -> table.number(speech.text("at", speech.fixed(volts, 1) + "\u00a0V"), "W"));
        table.number(speech.text("rise", speech.fixed(14.4, 1) + " V", speech.fixed(12, 1) + " V"), "dB");
        for (CurveGroup group : groups) {
            table.part(group.title(speech));
            group.curves().forEach(curve -> table.row(cells(curve)));
        }
        return table.build();
    }

    private List<String> cells(LoadCurve curve) {
        List<String> cells = new ArrayList<>();
        cells.add(speech.ohms(curve.nominalLoadOhms()));
        cells.add(curve.channel());
        CUSTOMARY_VOLTS.forEach(volts -> cells.add(cell(curve, volts)));
        cells.add(rise(curve));
        return cells;
    }

    private String cell(LoadCurve curve, double volts) {
        Estimate power = curve.powerAt(volts);
        String text = speech.stated(power.value(), power.expandedUncertainty(evidence.confidence()));
        if (curve.curve() instanceof SquareLawFallback) {
            return "\u2248\u00a0" + text;
        }
        double outside = curve.curve().predict(volts).extrapolationVolts();
        return outside > NEGLIGIBLE_VOLTS ? "(" + text + ")" : text;
    }

    private String rise(LoadCurve curve) {
        double low = curve.powerAt(CUSTOMARY_VOLTS.get(0)).value();
        double high =
                curve.powerAt(CUSTOMARY_VOLTS.get(CUSTOMARY_VOLTS.size() - 1)).value();
        return low > 0 && high > 0 ? speech.signed(10 * Math.log10(high / low), 2) : Figures.NONE;
    }
}
