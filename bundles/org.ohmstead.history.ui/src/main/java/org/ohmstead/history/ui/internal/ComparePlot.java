// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Tick;
import org.ohmstead.units.text.Messages;

/** The chart of powers, numbered as in the table, so that its bars can be seen. */
final class ComparePlot {
    private static final Messages TEXTS = Messages.of(ComparePlot.class);
    private static final int CHARS_IN_ALL = 56;

    private ComparePlot() {}

    /** Returns the chart with numbers, behind which names stand where there is room for all; its range follows the data. */
    static Plot of(Plot powers, CompareAnswer answer) {
        List<SubjectPower> all = answer.powers();
        int chars =
                all.stream().mapToInt(each -> each.subject().name().length()).sum();
        List<Tick> ticks = new ArrayList<>();
        for (int index = 0; index < all.size(); index++) {
            String number = Integer.toString(index + 1);
            ticks.add(new Tick(
                    index + 1.0,
                    chars > CHARS_IN_ALL
                            ? number
                            : number + "  " + all.get(index).subject().name()));
        }
        Axis x = powers.x();
        return powers.withTitle("")
                .withAxes(
                        new Axis(TEXTS.text("compare.number"), "", x.scale(), x.lower(), x.upper(), ticks),
                        Axis.linear(powers.y().label(), powers.y().unit()));
    }
}
