// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;

/** What is odd about the parts of a bench, or missing from them so that less can be said of the loads made of them. */
public final class StockProblems {
    private static final Messages TEXTS = Messages.of(StockProblems.class);

    private static final double SAME_VALUE_RATIO = 0.25;

    private StockProblems() {}

    /**
     * Looks at the parts of a bench.
     *
     * @param parts the bench's parts, in their order
     * @return what is wrong or missing, each with the path of the part's field in the project
     */
    public static List<Problem> of(List<Part> parts) {
        List<Problem> problems = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            String where = "$.bench.parts[" + i + "]";
            cooling(parts.get(i), where, problems);
            value(parts.get(i), where, problems);
            if (parts.get(i).traits().pulseRule().isEmpty()) {
                problems.add(new Problem(
                        Severity.NOTE,
                        where + ".pulseRule",
                        TEXTS.text("stock.noPulse", parts.get(i).id()),
                        TEXTS.text("stock.noPulseRemedy")));
            }
        }
        return List.copyOf(problems);
    }

    private static void cooling(Part part, String where, List<Problem> problems) {
        boolean sink = part.traits().sinkKelvinPerWatt().isPresent();
        if (part.mounting() == Mounting.FREE_AIR && sink) {
            problems.add(new Problem(
                    Severity.WARNING,
                    where + ".mounting",
                    TEXTS.text("stock.freeWithSink", part.id()),
                    TEXTS.text("stock.freeWithSinkRemedy")));
        } else if (part.mounting() != Mounting.FREE_AIR && !sink) {
            problems.add(new Problem(
                    Severity.NOTE,
                    where + ".sinkKelvinPerWatt",
                    TEXTS.text("stock.noSink", part.id()),
                    TEXTS.text("stock.noSinkRemedy")));
        }
    }

    private static void value(Part part, String where, List<Problem> problems) {
        double written;
        try {
            written = ResistanceText.read(part.id(), 0, part.id().length()).ohms();
        } catch (ResistanceText.Fault notAValue) {
            // An id that is a name says nothing of the value.
            return;
        }
        if (Math.abs(written - part.ohms()) > SAME_VALUE_RATIO * part.ohms()) {
            problems.add(new Problem(
                    Severity.WARNING,
                    where + ".id",
                    TEXTS.text("stock.misleading", part.id(), Figures.four(written), Figures.four(part.ohms())),
                    TEXTS.text("stock.misleadingRemedy")));
        }
    }
}
