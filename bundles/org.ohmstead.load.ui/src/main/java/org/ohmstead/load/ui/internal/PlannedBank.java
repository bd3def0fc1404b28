// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ohmstead.load.search.BankPlan;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Project;

/**
 * A bank with the loads that it was planned for.
 *
 * @param plan the plan
 * @param rows its straps in order
 */
record PlannedBank(BankPlan plan, List<StrapRow> rows) {
    PlannedBank {
        rows = List.copyOf(rows);
    }

    /** Returns a plan with the loads of its request. */
    static PlannedBank of(BankPlan plan, List<BenchLoad> loads) {
        List<StrapRow> rows = new ArrayList<>();
        for (BankPlan.Strap strap : plan.straps()) {
            rows.add(new StrapRow(rows.size() + 1, loads.get(strap.loadIndex()), strap));
        }
        return new PlannedBank(plan, rows);
    }

    /** Returns the change that builds the project's loads as the bank straps them; loads that are gone or missing stay as they are. */
    UnaryOperator<Project> change(double ambientCelsius) {
        return project -> project.withLoads(project.loads().stream()
                .map(load -> row(load.id())
                        .map(row -> built(load, row, ambientCelsius))
                        .orElse(load))
                .toList());
    }

    private Optional<StrapRow> row(String loadId) {
        return rows.stream().filter(row -> row.load().id().equals(loadId)).findFirst();
    }

    private static BenchLoad built(BenchLoad load, StrapRow row, double ambientCelsius) {
        Target target = Target.USUAL.withOhms(load.nominalOhms()).withAmbientCelsius(ambientCelsius);
        List<LoadBranch> branches = row.strap().branches().stream()
                .map(branch -> LoadUse.branch(FoundNetwork.of(branch.network(), target, false)))
                .toList();
        return load.withBranches(branches)
                .withPowerLimitWatts(row.limitWatts() > 0 ? row.limitWatts() : load.powerLimitWatts());
    }

    /** Returns what to do for a strap, a line each. */
    static String steps(StrapRow row) {
        StringBuilder out = new StringBuilder();
        out.append("CAUTIONS\n");
        out.append("! Switch the amplifier off and let the resistors cool before you move an end: they burn skin, and"
                + " paper and insulation too.\n");
        out.append("! Neither terminal of a bridged output is ground: join no terminal to ground or a chassis.\n");
        out.append("! Local codes and the judgement of a qualified person come before this list.\n\n");
        out.append(row.order() == 1 ? "STRAP\n" : "CHANGES\n");
        if (row.strap().changes().isEmpty()) {
            out.append("Nothing is to be moved.\n");
        }
        int number = 1;
        for (String change : row.strap().changes()) {
            out.append(number).append(". ").append(change).append('\n');
            number++;
        }
        out.append("\nDRAWING\n");
        out.append(
                "(1\u20132) behind a piece: its end 1 is on the left, towards terminal A. (2\u20131): its end 2 is.\n");
        out.append("\nMEASURE\n");
        int branch = 1;
        for (BankPlan.Branch each : row.strap().branches()) {
            out.append("Branch ").append(branch).append(": expect ").append(Words.ohms(each.ohms()));
            each.limitingPiece().ifPresent(piece -> out.append("; it takes ")
                    .append(Words.watts(each.powerLimitWatts().orElseThrow()))
                    .append(", then ")
                    .append(piece)
                    .append(" is at its limit"));
            out.append(".\n");
            branch++;
        }
        return out.toString();
    }
}
