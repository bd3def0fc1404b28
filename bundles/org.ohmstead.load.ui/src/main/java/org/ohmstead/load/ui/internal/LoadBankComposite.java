// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.load.drawing.NetworkDrawing;
import org.ohmstead.load.search.BankPlan;
import org.ohmstead.load.search.BankPlanRequest;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** One set of pieces for all loads of the project, and how to strap it for each. */
public final class LoadBankComposite extends Composite {
    private static final Messages TEXTS = Messages.of(LoadBankComposite.class);

    private static final int MOST_LOADS = 12;
    private static final double USUAL_CELSIUS = 25;
    private static final int[] STRAPS_AND_STRAP = {50, 50};
    private static final int[] DRAWING_AND_STEPS = {55, 45};

    private final ProjectDesk desk;
    private final Slices building;
    private BankForm form;
    private WorkBar bar;
    private ResultTable<StrapRow> straps;
    private StyledText parts;
    private Combo branch;
    private Button use;
    private DrawingCanvas drawing;
    private StyledText steps;
    private Optional<PlannedBank> bank = Optional.empty();
    private boolean focusedLater;

    /** Makes the view; its parts come one after the other in the next turns of the event loop. */
    public LoadBankComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        building = new Slices(this);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        Composite asking = Panes.stacked(this);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(asking);
        SashForm main = new SashForm(this, SWT.HORIZONTAL | SWT.SMOOTH);
        main.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(main);
        Composite left = Panes.stacked(main);
        Composite right = new Composite(main, SWT.NONE);
        Spacing.tight(3).applyTo(right);
        main.setWeights(STRAPS_AND_STRAP);
        building.add(() -> makeForm(asking));
        building.add(() -> makeStraps(left));
        building.add(() -> makeStrap(right));
        building.add(this::start);
    }

    private void makeForm(Composite parent) {
        form = new BankForm(parent);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        bar = new WorkBar(parent, desk.work(), "bank", TEXTS.text("bank.plan"), this::plan);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        bar.requestLayout();
    }

    private void makeStraps(Composite parent) {
        straps = new ResultTable<>(parent, "bank.straps", TEXTS.text("bank.straps"), false, StrapRow.columns());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(straps);
        parts = text(parent, "bank.pieces");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(1, 5 * parts.getLineHeight())
                .applyTo(parts);
        parts.requestLayout();
    }

    private void makeStrap(Composite parent) {
        Label label = new Label(parent, SWT.NONE);
        label.setText(TEXTS.text("bank.branch"));
        branch = Ids.name(new Combo(parent, SWT.READ_ONLY | SWT.DROP_DOWN), "bank.branch");
        branch.addListener(SWT.Selection, event -> straps.selection().ifPresent(this::showBranch));
        GridDataFactory.swtDefaults().applyTo(branch);
        use = Ids.name(new Button(parent, SWT.PUSH), "bank.use");
        use.setText(TEXTS.text("bank.use"));
        use.setToolTipText(TEXTS.text("bank.useHint"));
        use.addListener(SWT.Selection, event -> use());
        GridDataFactory.swtDefaults()
                .align(SWT.END, SWT.CENTER)
                .grab(true, false)
                .applyTo(use);
        SashForm strap = new SashForm(parent, SWT.VERTICAL | SWT.SMOOTH);
        strap.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).span(3, 1).hint(1, 1).applyTo(strap);
        drawing = new DrawingCanvas(strap, "bank.drawing");
        steps = text(strap, "bank.steps");
        strap.setWeights(DRAWING_AND_STEPS);
        strap.requestLayout();
    }

    /** Fills the parts when all of them are there. */
    private void start() {
        straps.onSelection(row -> row.ifPresent(this::show));
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> listening.close());
        clear();
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            form.setFocus();
        }
    }

    private static StyledText text(Composite parent, String id) {
        StyledText text =
                Ids.name(new StyledText(parent, SWT.BORDER | SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL), id);
        text.setFont(JFaceResources.getTextFont());
        text.setMargins(Spacing.GAP, Spacing.TIGHT, Spacing.GAP, Spacing.TIGHT);
        // Tab leaves the text, as it does every other control.
        text.addListener(SWT.Traverse, event -> event.doit = true);
        return text;
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            bar.forget();
            clear();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            boolean other = !before.bench().parts().equals(after.bench().parts());
            if (other && bank.isPresent()) {
                bar.say(Severity.NOTE, TEXTS.text("bank.stale"));
            }
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            form.show();
            straps.refresh();
            straps.selection().ifPresent(LoadBankComposite.this::show);
        }
    }

    private void clear() {
        bank = Optional.empty();
        straps.setRows(List.of());
        parts.setText("");
        steps.setText("");
        branch.removeAll();
        branch.setEnabled(false);
        use.setEnabled(false);
        drawing.showMessage(whyNothing());
    }

    private String whyNothing() {
        Optional<Project> project = desk.session().map(ProjectSession::project);
        if (project.isEmpty()) {
            return TEXTS.text("bank.noProject");
        }
        if (project.get().loads().isEmpty()) {
            return TEXTS.text("bank.noLoads");
        }
        if (project.get().bench().parts().isEmpty()) {
            return TEXTS.text("bank.noParts");
        }
        return TEXTS.text("bank.how");
    }

    private void plan() {
        if (!building.done()) {
            building.add(this::plan);
            return;
        }
        Optional<Project> project = desk.session().map(ProjectSession::project);
        if (!form.settled()) {
            return;
        }
        if (project.isEmpty()
                || project.get().loads().isEmpty()
                || project.get().bench().parts().isEmpty()) {
            bar.say(Severity.WARNING, whyNothing());
            return;
        }
        List<BenchLoad> loads = project.get().loads();
        if (loads.size() > MOST_LOADS) {
            bar.say(
                    Severity.WARNING,
                    TEXTS.text("bank.tooMany", Integer.toString(MOST_LOADS), Integer.toString(loads.size())));
            return;
        }
        BankPlanRequest request = form.wish().request(project.get());
        bar.run(
                TEXTS.text("bank.planning"),
                (ended, progress) -> BankPlan.find(request, ended, progress),
                plan -> take(PlannedBank.of(plan, loads)));
    }

    private void take(PlannedBank planned) {
        clear();
        BankPlan plan = planned.plan();
        List<String> sentences = new ArrayList<>(plan.missing());
        sentences.add(plan.message());
        String message = String.join(" ", sentences);
        if (plan.missing().isEmpty()) {
            bar.mention(message);
        } else {
            bar.say(Severity.WARNING, message);
        }
        bank = Optional.of(planned);
        straps.setRows(planned.rows());
        parts.setText(planned.rows().isEmpty() ? "" : pieces(plan));
        Emphasis.apply(parts);
        use.setEnabled(!planned.rows().isEmpty());
        if (!planned.rows().isEmpty()) {
            straps.select(Optional.of(planned.rows().get(0)));
            show(planned.rows().get(0));
        }
    }

    private static String pieces(BankPlan plan) {
        List<String> names = plan.pieces().stream().map(Object::toString).toList();
        return TEXTS.text(
                names.size() == 1 ? "bank.pieces.one" : "bank.pieces.many",
                Integer.toString(names.size()),
                String.join(", ", names));
    }

    private void show(StrapRow row) {
        int before = Math.max(0, branch.getSelectionIndex());
        int count = row.strap().branches().size();
        String[] names = new String[count];
        for (int i = 0; i < count; i++) {
            names[i] = count == 1
                    ? TEXTS.text("bank.onlyBranch")
                    : TEXTS.text("bank.branchOf", Integer.toString(i + 1), Integer.toString(count));
        }
        branch.setItems(names);
        branch.select(Math.min(before, count - 1));
        branch.setEnabled(count > 1);
        branch.requestLayout();
        steps.setText(PlannedBank.steps(row));
        Emphasis.apply(steps);
        showBranch(row);
    }

    private void showBranch(StrapRow row) {
        int index = Math.max(0, branch.getSelectionIndex());
        drawing.show(NetworkDrawing.of(StrapRow.named(row.strap().branches().get(index)), OptionalDouble.empty()));
    }

    private void use() {
        Optional<ProjectSession> session = desk.session();
        if (bank.isEmpty() || session.isEmpty()) {
            return;
        }
        if (session.get().readOnly()) {
            bar.say(Severity.WARNING, TEXTS.text("use.readOnly"));
            return;
        }
        double celsius = session.get().project().bench().ambientCelsius().orElse(USUAL_CELSIUS);
        session.get().edit(TEXTS.text("bank.edit"), bank.get().change(celsius));
        bar.mention(TEXTS.text("bank.done"));
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
