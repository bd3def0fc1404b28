// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** One step's heat, current and temperatures, worked out anew at every change. */
public final class StepHeatComposite extends Composite {
    private static final Messages TEXTS = Messages.of(StepHeatComposite.class);
    private static final int[] FORM_AND_ANSWER = {32, 68};
    private static final int[] TABLE_AND_CHART = {64, 36};

    private final ProjectDesk desk;
    private final Slices building;
    private StepForm form;
    private MessageLine alert;
    private Label summary;
    private FigureTable table;
    private ChartCanvas chart;
    private MessageLine remarks;
    private MessageLine caution;
    private boolean complete;
    private boolean focusedLater;
    private long newest;

    /** Makes the view; its parts come one after the other in the next turns of the event loop. */
    public StepHeatComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        building = new Slices(this);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        SashForm main = new SashForm(this, SWT.HORIZONTAL | SWT.SMOOTH);
        main.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(main);
        ScrolledComposite left = new ScrolledComposite(main, SWT.V_SCROLL);
        Composite right = new Composite(main, SWT.NONE);
        Spacing.tight(1).applyTo(right);
        main.setWeights(FORM_AND_ANSWER);
        building.add(() -> makeForm(left));
        building.add(() -> makeAnswer(right));
        addDisposeListener(event -> newest++);
    }

    private void makeForm(ScrolledComposite parent) {
        form = new StepForm(parent, building);
        parent.setContent(form);
        parent.setExpandHorizontal(true);
        parent.setExpandVertical(true);
        parent.setShowFocusedControl(true);
        parent.addListener(SWT.Resize, event -> fit());
        form.addListener(SWT.Resize, event -> fit());
    }

    private void fit() {
        ScrolledComposite scrolled = (ScrolledComposite) form.getParent();
        int width = scrolled.getClientArea().width;
        if (width > 0) {
            scrolled.setMinHeight(form.computeSize(width, SWT.DEFAULT, false).y);
        }
    }

    private void makeAnswer(Composite parent) {
        alert = new MessageLine(parent, "calc.alert");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(alert);
        alert.setVisible(false);
        summary = Ids.name(new Label(parent, SWT.WRAP), "calc.summary");
        summary.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(summary);
        SashForm sash = new SashForm(parent, SWT.VERTICAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        table = new FigureTable(sash, "calc.table");
        building.add(() -> makeChart(parent, sash));
    }

    private void makeChart(Composite parent, SashForm sash) {
        chart = Ids.name(new ChartCanvas(sash, SWT.BORDER), "calc.chart");
        sash.setWeights(TABLE_AND_CHART);
        remarks = new MessageLine(parent, "calc.remarks");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(remarks);
        caution = new MessageLine(parent, "calc.caution");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        parent.layout(true, true);
        building.add(this::start);
    }

    private void start() {
        complete = true;
        form.onChange(this::reckon);
        form.onStep(this::begin);
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> listening.close());
        style();
        takeSession();
        fit();
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            form.setFocus();
        }
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            takeSession();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            if (!before.plan().equals(after.plan())) {
                form.setPlan(after.plan());
            }
            if (before.heat().amplifier().outputClass()
                    != after.heat().amplifier().outputClass()) {
                form.setOutputClass(after.heat().amplifier().outputClass());
            }
            if (!before.bench().ambientCelsius().equals(after.bench().ambientCelsius())) {
                form.setAir(after.bench().ambientCelsius());
            }
            if (before.heat().pacing().stepSeconds() != after.heat().pacing().stepSeconds()) {
                form.setSeconds(after.heat().pacing().stepSeconds());
            }
            if (!before.heat().equals(after.heat())
                    || !before.amplifier().equals(after.amplifier())
                    || !before.bench().equals(after.bench())) {
                reckon();
            }
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            style();
            form.refresh();
            reckon();
        }
    }

    private Optional<Project> project() {
        return desk.session().map(ProjectSession::project);
    }

    private void style() {
        chart.setReadOutStyle(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
    }

    private void takeSession() {
        Optional<Project> project = project();
        form.setProject(project);
        Optional<Step> first = project.flatMap(open -> open.plan().stream().findFirst());
        if (first.isPresent()) {
            begin(first.get());
        } else {
            reckon();
        }
    }

    /** Takes a step of the plan as it stands. */
    private void begin(Step step) {
        project().ifPresent(open -> form.setStart(StepStart.of(open, step, readings(open))));
        fit();
        reckon();
    }

    private List<Reading> readings(Project project) {
        return desk.log().entries().stream()
                .filter(entry ->
                        !entry.voided() && project.reasonSetAside(entry.id()).isEmpty())
                .flatMap(entry -> entry.reading().stream())
                .toList();
    }

    /** Works the step out in the background; of several only the newest is shown. */
    private void reckon() {
        newest++;
        long number = newest;
        StepQuestion question = form.question();
        Optional<Project> project = project();
        desk.work()
                .start(
                        TEXTS.text("calc.job"),
                        progress -> StepAnswer.of(question, project),
                        answer -> {
                            if (number == newest && !isDisposed()) {
                                take(answer);
                            }
                        },
                        failure -> {
                            if (number == newest && !isDisposed()) {
                                say(Optional.of(TEXTS.text("calc.failed", failure.getMessage())));
                            }
                        });
    }

    private void take(StepAnswer answer) {
        table.show(answer.rows());
        if (!summary.getText().equals(answer.summary())) {
            summary.setText(answer.summary());
            summary.requestLayout();
        }
        if (answer.plot().isPresent()) {
            chart.show(PlotSource.of(answer.plot().get()), false);
        } else {
            chart.showMessage(answer.whyNoPlot());
        }
        remarks.mention(Numbers.inSentence(String.join(" ", answer.remarks())));
        boolean battery = project().map(open -> open.heat().supply().battery()).orElse(false);
        caution.show(Severity.WARNING, TEXTS.text(battery ? "calc.caution.battery" : "calc.caution"));
        say(answer.alert());
    }

    private void say(Optional<String> sentence) {
        ((GridData) alert.getLayoutData()).exclude = sentence.isEmpty();
        alert.setVisible(sentence.isPresent());
        if (sentence.isPresent()) {
            alert.show(Severity.ERROR, Numbers.inSentence(sentence.get()));
        } else {
            alert.clear();
        }
        alert.requestLayout();
    }

    @Override
    public boolean setFocus() {
        if (!complete) {
            focusedLater = true;
            return forceFocus();
        }
        return form.setFocus();
    }
}
