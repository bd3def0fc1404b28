// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.thermal.HeatFit;
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

/** From a logged warm-up or cool-down to the thermal resistance and heat capacity of the amplifier. */
public final class IdentifyComposite extends Composite {
    private static final Messages TEXTS = Messages.of(IdentifyComposite.class);
    private static final int[] FORM_AND_ANSWER = {30, 70};
    private static final int[] TABLE_AND_CHARTS = {38, 62};
    private static final int[] READINGS_AND_RESIDUALS = {58, 42};

    private final ProjectDesk desk;
    private final Slices building;
    private IdentifyForm form;
    private MessageLine message;
    private FigureTable table;
    private ChartCanvas readings;
    private ChartCanvas residuals;
    private MessageLine remarks;
    private MessageLine reason;
    private Button use;
    private Optional<IdentifyAnswer> answer = Optional.empty();
    private boolean complete;
    private boolean focusedLater;
    private long newest;

    /** Makes the view; its parts come one after the other in the next turns of the event loop. */
    public IdentifyComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        building = new Slices(this);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        SashForm main = sash(this, SWT.HORIZONTAL);
        Composite left = new Composite(main, SWT.NONE);
        Spacing.tight(1).applyTo(left);
        Composite right = new Composite(main, SWT.NONE);
        Spacing.tight(1).applyTo(right);
        main.setWeights(FORM_AND_ANSWER);
        building.add(() -> makeForm(left));
        building.add(() -> makeAnswer(right));
        building.add(() -> makeUse(right));
        building.add(this::start);
        addDisposeListener(event -> newest++);
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        return sash;
    }

    private void makeForm(Composite parent) {
        form = new IdentifyForm(parent, desk.work());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(form);
        parent.layout(true, true);
    }

    private void makeAnswer(Composite parent) {
        message = new MessageLine(parent, "identify.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        SashForm rows = sash(parent, SWT.VERTICAL);
        table = new FigureTable(rows, "identify.table", TEXTS.text("identify.interval"), TEXTS.text("identify.remark"));
        SashForm charts = new SashForm(rows, SWT.HORIZONTAL | SWT.SMOOTH);
        charts.setSashWidth(Spacing.TIGHT);
        readings = Ids.name(new ChartCanvas(charts, SWT.BORDER), "identify.chart");
        residuals = Ids.name(new ChartCanvas(charts, SWT.BORDER), "identify.residuals");
        charts.setWeights(READINGS_AND_RESIDUALS);
        rows.setWeights(TABLE_AND_CHARTS);
        remarks = new MessageLine(parent, "identify.remarks");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(remarks);
    }

    private void makeUse(Composite parent) {
        Composite bar = new Composite(parent, SWT.NONE);
        Spacing.group(2).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        use = Ids.name(new Button(bar, SWT.PUSH), "identify.use");
        use.setText(TEXTS.text("identify.use"));
        use.setToolTipText(TEXTS.text("identify.use.hint"));
        use.addListener(SWT.Selection, event -> use());
        reason = new MessageLine(bar, "identify.reason");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(reason);
        MessageLine caution = new MessageLine(parent, "identify.caution");
        caution.show(Severity.WARNING, TEXTS.text("identify.caution"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        parent.layout(true, true);
    }

    private void start() {
        complete = true;
        form.onChange(this::fit);
        form.onFailure(sentence -> message.show(Severity.ERROR, sentence));
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> listening.close());
        style();
        clear(TEXTS.text("identify.empty"));
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            form.setFocus();
        }
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            enable();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            enable();
        }

        @Override
        public void stateChanged() {
            enable();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            style();
            form.refresh();
            answer.ifPresent(IdentifyComposite.this::show);
        }
    }

    private void style() {
        ReadOutStyle style =
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords());
        readings.setReadOutStyle(style);
        residuals.setReadOutStyle(style);
    }

    private void clear(String sentence) {
        newest++;
        answer = Optional.empty();
        table.show(List.of());
        readings.showMessage(sentence);
        residuals.showMessage("");
        message.clear();
        remarks.clear();
        enable();
    }

    /** Reads and fits in the background; of several only the newest is shown. */
    private void fit() {
        String text = form.record();
        if (text.isBlank()) {
            clear(TEXTS.text("identify.empty"));
            return;
        }
        newest++;
        long number = newest;
        OptionalDouble heat = form.heatWatts();
        OptionalDouble air = form.airCelsius();
        boolean cold = form.startsCold();
        message.mention(fitting());
        desk.work()
                .start(
                        TEXTS.text("identify.job"),
                        progress -> IdentifyAnswer.of(LoggedWarmth.read(text), heat, cold, air),
                        made -> {
                            if (number == newest && !isDisposed()) {
                                show(made);
                            }
                        },
                        failure -> {
                            if (number == newest && !isDisposed()) {
                                clear(TEXTS.text("identify.nothing"));
                                message.show(Severity.ERROR, String.valueOf(failure.getMessage()));
                            }
                        });
    }

    private void show(IdentifyAnswer made) {
        answer = Optional.of(made);
        table.show(made.rows());
        readings.show(PlotSource.of(IdentifyPlot.readings(made)), false);
        if (made.fit() instanceof HeatFit.Refused refused) {
            message.show(Severity.WARNING, Numbers.inSentence(refused.reason() + " " + refused.remedy()));
            residuals.showMessage(TEXTS.text("identify.noResiduals"));
            remarks.clear();
        } else {
            HeatFit.Found found = (HeatFit.Found) made.fit();
            message.mention(summary(made, found));
            residuals.show(PlotSource.of(IdentifyPlot.residuals(made, found)), false);
            remarks.mention(Numbers.inSentence(String.join(" ", found.remarks())));
        }
        enable();
    }

    /** Returns what is said while a record is being fitted. */
    static String fitting() {
        return TEXTS.text("identify.fitting");
    }

    private static String summary(IdentifyAnswer made, HeatFit.Found found) {
        String key = (found.stages().size() == 1 ? "identify.fit.one" : "identify.fit.two")
                + (made.heatInRecord() ? ".record" : "");
        return TEXTS.text(key, HeatWords.count(made.readings().size(), "identify.readings"));
    }

    private void enable() {
        Optional<String> why = why();
        use.setEnabled(why.isEmpty());
        if (why.isPresent()) {
            reason.mention(why.get());
        } else {
            IdentifyAnswer made = answer.orElseThrow();
            reason.mention(TEXTS.text(
                    "identify.found",
                    HeatWords.range(made.kelvinPerWatt().orElseThrow()),
                    HeatWords.range(made.joulesPerKelvin().orElseThrow())));
        }
    }

    private Optional<String> why() {
        if (answer.isEmpty()) {
            return Optional.of(TEXTS.text("identify.noFit"));
        }
        if (answer.get().whyNot().isPresent()) {
            return answer.get().whyNot();
        }
        if (desk.session().isEmpty()) {
            return Optional.of(TEXTS.text("identify.noProject"));
        }
        return desk.session().get().readOnly() ? Optional.of(TEXTS.text("identify.readOnly")) : Optional.empty();
    }

    private void use() {
        IdentifyAnswer made = answer.orElseThrow();
        ProjectSession session = desk.session().orElseThrow();
        session.edit(
                TEXTS.text("identify.edit"),
                project -> project.withHeat(
                        project.heat().withAmplifier(made.into(project.heat().amplifier()))));
        reason.mention(TEXTS.text("identify.used"));
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
