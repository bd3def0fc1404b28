// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.table.CellMark;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.EditTable;
import org.ohmstead.workbench.table.Mark;
import org.ohmstead.workbench.table.TableSpec;

/** Ties the table of branches to the load that is chosen in the table of loads. */
final class BranchBinding implements Binding {

    private final FormPage page;
    private final EditTable<BenchLoad> loads;
    private final Label heading;
    private final EditTable<LoadBranch> branches;
    private List<Problem> problems = List.of();

    BranchBinding(FormPage page, EditTable<BenchLoad> loads, Label heading, EditTable<LoadBranch> branches) {
        this.page = page;
        this.loads = loads;
        this.heading = heading;
        this.branches = branches;
        branches.onChange(this::change);
        loads.onSelection(rows -> page.project().ifPresent(this::showProject));
    }

    static TableSpec<LoadBranch> spec() {
        return TableSpec.of(
                        "branches",
                        Texts.text("table.branch"),
                        Texts.text("table.branches"),
                        List.of(
                                Columns.quantity(
                                                "ohms",
                                                Texts.text("branch.ohms"),
                                                Measure.of(Unit.OHM),
                                                LoadBranch::ohms,
                                                LoadBranch::withOhms)
                                        .withHover(BranchBinding::resistanceHover),
                                Columns.quantity(
                                                "standardUncertaintyOhms",
                                                Texts.text("branch.uncertainty"),
                                                Measure.milli(Unit.OHM),
                                                LoadBranch::standardUncertaintyOhms,
                                                LoadBranch::withStandardUncertaintyOhms)
                                        .withHover(BranchBinding::resistanceHover),
                                Columns.quantity(
                                                "leadStandardUncertaintyOhms",
                                                Texts.text("branch.leads"),
                                                Measure.milli(Unit.OHM),
                                                LoadBranch::leadStandardUncertaintyOhms,
                                                LoadBranch::withLeadStandardUncertaintyOhms)
                                        .withHover(branch -> Texts.text("branch.leads.hover")),
                                Columns.quantity(
                                                "heatingRatio",
                                                Texts.text("branch.heating"),
                                                Measure.percentOfOne(),
                                                LoadBranch::heatingRatio,
                                                LoadBranch::withHeatingRatio)
                                        .withHover(branch -> Texts.text("branch.heating.hover")),
                                Columns.quantity(
                                        "inductanceHenries",
                                        Texts.text("branch.inductance"),
                                        Measure.micro(Unit.HENRY),
                                        LoadBranch::inductanceHenries,
                                        LoadBranch::withInductanceHenries),
                                Columns.text(
                                                "network",
                                                Texts.text("branch.network"),
                                                LoadBranch::network,
                                                LoadBranch::withNetwork)
                                        .withWidth(30)
                                        .withHover(branch -> Texts.text("branch.network.hover"))))
                .withEditNames(Texts.edits("branch"))
                .withNewRow(rows -> rows.isEmpty() ? new LoadBranch(4, 0, 0, "") : rows.get(rows.size() - 1))
                .withDuplicate((branch, rows) -> branch);
    }

    private static String resistanceHover(LoadBranch branch) {
        return measured(branch) + ".";
    }

    /** Returns a branch's resistance with its uncertainty. */
    static String measured(LoadBranch branch) {
        return Texts.text(
                "branch.ohms.hover",
                Words.ohms(branch.ohms()),
                Words.ohms(Coverage.expanded(branch.standardUncertaintyOhms())),
                Coverage.words());
    }

    private int index() {
        return loads.selection().stream()
                .findFirst()
                .map(load -> loads.rows().indexOf(load))
                .orElse(loads.rows().isEmpty() ? -1 : 0);
    }

    private void change(String name, List<LoadBranch> rows) {
        int index = index();
        if (index < 0) {
            throw new IllegalArgumentException(Texts.text("branch.homeless"));
        }
        if (rows.isEmpty()) {
            throw new IllegalArgumentException(Texts.text("branch.last"));
        }
        page.edit(Texts.text("branch.edit", name, loads.rows().get(index).id()), project -> {
            List<BenchLoad> changed = new ArrayList<>(project.loads());
            changed.set(index, changed.get(index).withBranches(rows));
            return project.withLoads(changed);
        });
    }

    @Override
    public void showProject(Project project) {
        int index = index();
        boolean there = index >= 0 && index < project.loads().size();
        Optional<BenchLoad> load = there ? Optional.of(project.loads().get(index)) : Optional.empty();
        heading.setText(
                load.map(shown -> Texts.text("branch.heading.load", shown.id())).orElse(Texts.text("branch.heading")));
        List<LoadBranch> rows = load.map(BenchLoad::branches).orElse(List.of());
        if (!rows.equals(branches.rows())) {
            branches.setRows(rows);
        }
        mark();
    }

    @Override
    public void showDisplay(Project project) {
        branches.refresh();
    }

    @Override
    public void showProblems(List<Problem> found) {
        problems = found;
        mark();
    }

    private void mark() {
        String within = "$.loads[" + index() + "].branches[";
        List<CellMark> marks = new ArrayList<>();
        for (Problem problem : problems) {
            if (problem.where().startsWith(within)) {
                ProjectPath.parse(problem.where())
                        .ifPresent(path -> marks.add(new CellMark(
                                path.index(1),
                                path.rest(2),
                                new Mark(problem.severity(), problem.what() + " " + problem.remedy()))));
            }
        }
        branches.setMarks(marks);
    }

    @Override
    public boolean reveal(ProjectPath place) {
        int load = place.name(0).equals("loads") ? place.index(0) : -1;
        int branch = place.name(1).equals("branches") ? place.index(1) : -1;
        if (load < 0 || load >= loads.rows().size() || branch < 0) {
            return false;
        }
        loads.select(load, "branches");
        if (branch < branches.rows().size()) {
            branches.select(branch, place.rest(2));
        }
        return true;
    }

    @Override
    public void setReadOnly(boolean readOnly) {
        branches.setReadOnly(readOnly);
    }
}
