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
import org.ohmstead.units.text.Messages;

/**
 * A bank with the loads that it was planned for.
 *
 * @param plan the plan
 * @param rows its straps in order
 */
record PlannedBank(BankPlan plan, List<StrapRow> rows) {
    private static final Messages TEXTS = Messages.of(PlannedBank.class);

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
        out.append(TEXTS.text("steps.cautions")).append("\n! ");
        out.append(TEXTS.text("steps.hot")).append("\n! ");
        out.append(TEXTS.text("steps.bridged")).append("\n! ");
        out.append(TEXTS.text("steps.codes")).append("\n\n");
        out.append(TEXTS.text(row.order() == 1 ? "steps.strap" : "steps.changes"))
                .append('\n');
        if (row.strap().changes().isEmpty()) {
            out.append(TEXTS.text("steps.nothing")).append('\n');
        }
        int number = 1;
        for (String change : row.strap().changes()) {
            out.append(number).append(". ").append(change).append('\n');
            number++;
        }
        out.append('\n').append(TEXTS.text("steps.drawing")).append('\n');
        out.append(TEXTS.text("steps.ends")).append('\n');
        out.append('\n').append(TEXTS.text("steps.measure")).append('\n');
        int branch = 1;
        for (BankPlan.Branch each : row.strap().branches()) {
            out.append(expected(Integer.toString(branch), each)).append('\n');
            branch++;
        }
        return out.toString();
    }

    private static String expected(String number, BankPlan.Branch branch) {
        String ohms = Words.ohms(branch.ohms());
        return branch.limitingPiece()
                .map(piece -> TEXTS.text(
                        "steps.expectLimited",
                        number,
                        ohms,
                        Words.watts(branch.powerLimitWatts().orElseThrow()),
                        piece))
                .orElseGet(() -> TEXTS.text("steps.expect", number, ohms));
    }
}
