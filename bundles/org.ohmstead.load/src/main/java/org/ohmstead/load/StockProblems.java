// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;

/** What is odd about the parts of a bench, or missing from them so that less can be said of the loads made of them. */
public final class StockProblems {
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
                        "No short overload is known for \"" + parts.get(i).id()
                                + "\", so bursts above its rating cannot be judged.",
                        "Enter the overload that its maker allows, such as 5 times for 5 s."));
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
                    "\"" + part.id() + "\" is said to be in free air, but has a heat sink's thermal resistance.",
                    "Say that it is on a heat sink, or take the thermal resistance away."));
        } else if (part.mounting() != Mounting.FREE_AIR && !sink) {
            problems.add(new Problem(
                    Severity.NOTE,
                    where + ".sinkKelvinPerWatt",
                    "The thermal resistance of the heat sink of \"" + part.id()
                            + "\" is not known, so its rating is taken by the temperature of the air.",
                    "Enter it in kelvins per watt to have the case's temperature and the power worked out."));
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
                    "The id \"" + part.id() + "\" reads as " + Figures.four(written) + " ohm, but the part has "
                            + Figures.four(part.ohms()) + " ohm.",
                    "Give it an id that does not mislead, or correct the value."));
        }
    }
}
