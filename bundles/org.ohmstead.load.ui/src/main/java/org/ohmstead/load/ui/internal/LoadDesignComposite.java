// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.load.Network;
import org.ohmstead.load.Stock;
import org.ohmstead.load.search.NetworkSearch;
import org.ohmstead.load.search.SearchRequest;
import org.ohmstead.load.search.SearchResult;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** From the parts stock to a load: the target, the networks that meet it, and all about the chosen one. */
public final class LoadDesignComposite extends Composite {
    private static final Messages TEXTS = Messages.of(LoadDesignComposite.class);

    private static final int[] FORM_AND_LOADS = {58, 42};
    private static final int[] FOUND_AND_DETAIL = {48, 52};
    private static final int[] CANDIDATES_AND_CHART = {55, 45};

    private final ProjectDesk desk;
    private final Slices building;
    private TargetForm form;
    private WorkBar search;
    private ResultTable<LoadRow> loads;
    private NetworkEntry entry;
    private UseBar use;
    private ResultTable<FoundNetwork> candidates;
    private ChartCanvas chart;
    private DetailPane detail;
    private List<FoundNetwork> found = List.of();
    private Optional<FoundNetwork> chosen = Optional.empty();
    private Optional<ErrorPowerPlot> shown = Optional.empty();
    private boolean focusedLater;

    /** Makes the view; its parts come one after the other in the next turns of the event loop. */
    public LoadDesignComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        building = new Slices(this);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        SashForm top = sash(this, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        Composite asking = Panes.stacked(top);
        Composite offered = Panes.filled(top);
        top.setWeights(FORM_AND_LOADS);
        SashForm main = sash(this, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(main);
        SashForm left = sash(main, SWT.VERTICAL);
        Composite listed = Panes.filled(left);
        Composite drawn = Panes.filled(left);
        left.setWeights(CANDIDATES_AND_CHART);
        Composite right = Panes.stacked(main);
        main.setWeights(FOUND_AND_DETAIL);
        building.add(() -> makeForm(asking));
        building.add(this::makeRestOfForm);
        building.add(() -> makeSearch(asking));
        building.add(() -> makeLoads(offered));
        building.add(() -> makeCandidates(listed));
        building.add(() -> makeChart(drawn));
        building.add(() -> makeEntry(right));
        building.add(() -> makeDetail(right));
        building.add(this::start);
    }

    private void makeForm(Composite parent) {
        form = new TargetForm(parent);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        form.requestLayout();
    }

    private void makeRestOfForm() {
        form.makeRest();
        form.requestLayout();
    }

    private void makeSearch(Composite parent) {
        search = new WorkBar(parent, desk.work(), "design", TEXTS.text("design.find"), this::search);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(search);
        search.requestLayout();
    }

    private void makeLoads(Composite parent) {
        loads = new ResultTable<>(parent, "design.loads", TEXTS.text("design.loads"), false, LoadColumns.all());
        loads.widen(2);
        loads.requestLayout();
    }

    private void makeCandidates(Composite parent) {
        candidates = new ResultTable<>(
                parent, "design.candidates", TEXTS.text("design.candidates"), true, CandidateColumns.all());
        candidates.widen(0);
        candidates.requestLayout();
    }

    private void makeChart(Composite parent) {
        chart = Ids.name(new ChartCanvas(parent, SWT.BORDER), "design.chart");
        chart.requestLayout();
    }

    private void makeEntry(Composite parent) {
        entry = new NetworkEntry(parent);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(entry);
        use = new UseBar(parent, desk);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(use);
        use.requestLayout();
    }

    private void makeDetail(Composite parent) {
        detail = new DetailPane(parent, desk, building);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(detail);
        detail.requestLayout();
    }

    /** Fills the parts when all of them are there. */
    private void start() {
        if (!detail.complete()) {
            building.add(this::start);
            return;
        }
        listen();
        style();
        project().ifPresent(project -> form.setTarget(form.target().in(project)));
        takeProject();
        clearFound();
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            form.setFocus();
        }
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        return sash;
    }

    private void listen() {
        form.onChange(target -> retarget());
        loads.onSelection(row -> row.ifPresent(this::aim));
        candidates.onSelection(row -> row.ifPresent(this::choose));
        entry.onNetwork(this::typed);
        entry.onFault(use::fault);
        Runnable noPoints = chart.addPointListener(this::pointChosen);
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> {
            listening.close();
            noPoints.run();
        });
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            search.forget();
            session.ifPresent(opened -> form.setTarget(Target.USUAL.in(opened.project())));
            takeProject();
            clearFound();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            if (!before.bench().parts().equals(after.bench().parts())
                    || !before.loads().equals(after.loads())) {
                takeProject();
            }
        }

        @Override
        public void stateChanged() {
            use.refresh();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            style();
            form.setTarget(form.target());
            loads.refresh();
            candidates.refresh();
            use.show(chosen, form.target());
        }
    }

    private Optional<Project> project() {
        return desk.session().map(ProjectSession::project);
    }

    private Stock stock() {
        return project().map(project -> Stock.of(project.bench().parts())).orElse(Stock.EMPTY);
    }

    private void style() {
        chart.setReadOutStyle(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
        detail.style();
    }

    /** Shows the project's loads anew and reads typed networks with its parts. */
    private void takeProject() {
        Stock stock = stock();
        loads.setRows(project()
                .map(project -> project.loads().stream()
                        .map(load -> LoadRow.of(load, stock))
                        .toList())
                .orElse(List.of()));
        entry.setStock(stock);
        use.refresh();
    }

    private void clearFound() {
        found = List.of();
        chosen = Optional.empty();
        candidates.setRows(found);
        chart.showMessage(whyNothing());
        use.show(chosen, form.target());
        detail.clear(whyNothing());
    }

    private String whyNothing() {
        if (desk.session().isEmpty()) {
            return TEXTS.text("design.noProject");
        }
        return stock().items().isEmpty() ? TEXTS.text("design.noParts") : TEXTS.text("design.how");
    }

    /** Takes a load of the project as the target and shows how it is built now. */
    private void aim(LoadRow row) {
        form.setTarget(row.target(form.target()));
        use.into(row.load().id());
        clearFound();
        row.network().ifPresent(network -> {
            entry.setNetwork(row.notation());
            choose(FoundNetwork.of(network, form.target(), false), false);
        });
    }

    private void search() {
        if (!building.done()) {
            building.add(this::search);
            return;
        }
        if (!form.settled()) {
            return;
        }
        if (stock().items().isEmpty()) {
            search.say(Severity.WARNING, whyNothing());
            return;
        }
        Target target = form.target();
        SearchRequest request = target.request(stock());
        search.run(
                TEXTS.text("design.finding"),
                (ended, progress) -> NetworkSearch.run(request, ended, progress),
                result -> take(result, target));
    }

    private void take(SearchResult result, Target target) {
        say(result);
        found = FoundNetwork.of(result, target);
        candidates.setRows(found);
        if (found.isEmpty()) {
            clearFound();
            return;
        }
        choose(found.get(0));
    }

    private void say(SearchResult result) {
        if (result.candidates().isEmpty()) {
            search.say(Severity.WARNING, result.message());
        } else if (result.ending() == SearchResult.Ending.COMPLETE) {
            search.mention(result.message());
        } else {
            search.say(Severity.NOTE, TEXTS.text("design.bestSoFar", result.message()));
        }
    }

    /** Figures follow the target; what was found for another value stays until the next search. */
    private void retarget() {
        Target target = form.target();
        found = found.stream()
                .map(each -> FoundNetwork.of(each.network(), target, each.unbeaten()))
                .toList();
        candidates.setRows(found);
        chosen.ifPresent(each -> choose(FoundNetwork.of(each.network(), target, each.unbeaten())));
    }

    private void typed(Network network) {
        choose(FoundNetwork.of(network, form.target(), false), false);
    }

    private void choose(FoundNetwork network) {
        choose(network, true);
    }

    /** Shows a network; {@code written} unless it is being typed. */
    private void choose(FoundNetwork network, boolean written) {
        chosen = Optional.of(network);
        candidates.select(chosen);
        if (written) {
            entry.setNetwork(network.notation());
        }
        use.show(chosen, form.target());
        showChart();
        detail.show(network, form.target());
    }

    private void showChart() {
        List<FoundNetwork> all = new ArrayList<>(found);
        chosen.filter(each -> !all.contains(each)).ifPresent(all::add);
        boolean before = shown.isPresent();
        shown = ErrorPowerPlot.of(all, chosen, form.target());
        if (shown.isPresent()) {
            chart.show(PlotSource.of(shown.get().plot()), before);
        } else {
            chart.showMessage(TEXTS.text("design.noLimits"));
        }
    }

    private void pointChosen(ChosenPoint point) {
        shown.flatMap(plot -> plot.networkOf(point.series(), point.index())).ifPresent(this::choose);
    }

    @Override
    public boolean setFocus() {
        if (!isDisposed() && !building.done()) {
            focusedLater = true;
            return forceFocus();
        }
        // A composite that is being disposed is asked to give the focus to one of its own.
        return !isDisposed() && !form.isDisposed() && form.setFocus();
    }
}
