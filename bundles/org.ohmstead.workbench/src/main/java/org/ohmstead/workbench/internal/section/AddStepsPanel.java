// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.jface.layout.RowLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.RowData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.Refusals;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** Picks a block of steps and adds those that the plan does not have yet, as one edit. */
final class AddStepsPanel extends Composite {
    private static final int LOADS_WIDTH = 300;

    private final FormPage page;
    private final Map<Mode, Button> modes = new EnumMap<>(Mode.class);
    private final Composite loadRow;
    private final Map<String, Button> loads = new LinkedHashMap<>();
    private final Text volts;
    private final Button steady;
    private final Button burst;
    private final Text frequency;
    private final Text onTime;
    private final Text period;
    private final Text lowLevel;
    private final Combo end;
    private final Text limit;
    private final Combo measure;
    private final Button confirm;
    private final MessageLine preview;
    private final Button add;
    private boolean readOnly;

    AddStepsPanel(Composite parent, FormPage page, Runnable close) {
        super(parent, SWT.BORDER);
        this.page = page;
        Spacing.page(2).applyTo(this);
        Composite modeRow = row(Texts.text("addsteps.modes"));
        for (Mode mode : Mode.values()) {
            modes.put(mode, check(modeRow, "mode." + mode.name().toLowerCase(Locale.ROOT), Words.of(mode)));
        }
        modes.get(Mode.STEREO).setSelection(true);
        loadRow = row(Texts.text("addsteps.loads"));
        Composite supply = row(Texts.text("addsteps.supply"));
        volts = text(supply, "volts", "11.5 12.5 13.5 14.4", 30);
        unit(supply, Texts.text("addsteps.supply.unit"));
        Composite stimulus = row(Texts.text("addsteps.stimulus"));
        steady = check(stimulus, "continuous", Words.of(PowerKind.CONTINUOUS));
        steady.setSelection(true);
        burst = check(stimulus, "burst", Words.of(PowerKind.BURST));
        unit(stimulus, Texts.text("addsteps.frequency.before"));
        frequency = text(stimulus, "frequency", "1000", 8);
        unit(stimulus, "Hz");
        Composite bursts = row(Texts.text("addsteps.bursts"));
        onTime = text(bursts, "on", Measure.milli(Unit.SECOND).exact(StepTable.USUAL_BURST.onSeconds()), 7);
        unit(bursts, Texts.text("addsteps.on.unit"));
        period = text(bursts, "period", Measure.milli(Unit.SECOND).exact(StepTable.USUAL_BURST.periodSeconds()), 7);
        unit(bursts, Texts.text("addsteps.period.unit"));
        lowLevel = text(bursts, "lowlevel", Words.number(StepTable.USUAL_BURST.lowLevelDb()), 7);
        unit(bursts, "dB");
        Composite ending = row(Texts.text("addsteps.end"));
        end = combo(
                ending,
                "end",
                Words.of(StepTable.EndKind.DISTORTION_LIMIT),
                Words.of(StepTable.EndKind.CLIPPING_ONSET));
        limit = text(ending, "limit", "1", 7);
        unit(ending, Texts.text("addsteps.limit.unit"));
        measure = combo(
                ending,
                "measure",
                Stream.of(DistortionMeasure.values()).map(Words::of).toArray(String[]::new));
        new Label(this, SWT.NONE);
        confirm = check(this, "confirm", Texts.text("addsteps.confirm"));
        new Label(this, SWT.NONE);
        preview = new MessageLine(this, "addsteps.preview");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(preview);
        new Label(this, SWT.NONE);
        Composite buttons = new Composite(this, SWT.NONE);
        Spacing.group(2).applyTo(buttons);
        add = Buttons.push(buttons, "addsteps.add", Texts.text("addsteps.add"));
        add.addListener(SWT.Selection, event -> addSteps());
        Buttons.push(buttons, "addsteps.close", Texts.text("addsteps.close"))
                .addListener(SWT.Selection, event -> close.run());
        showChoices();
    }

    private Composite row(String name) {
        Label label = new Label(this, SWT.NONE);
        label.setText(name);
        Composite row = new Composite(this, SWT.NONE);
        RowLayoutFactory.fillDefaults()
                .wrap(true)
                .center(true)
                .spacing(Spacing.GAP)
                .applyTo(row);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LOADS_WIDTH, SWT.DEFAULT)
                .applyTo(row);
        return row;
    }

    private Button check(Composite parent, String id, String words) {
        Button button = Ids.name(new Button(parent, SWT.CHECK), "addsteps." + id);
        button.setText(words);
        button.addListener(SWT.Selection, event -> showChoices());
        return button;
    }

    private Text text(Composite parent, String id, String start, int characters) {
        Text text = Ids.name(new Text(parent, SWT.BORDER), "addsteps." + id);
        text.setText(Numbers.localised(start));
        text.setLayoutData(new RowData(new PixelConverter(text).convertWidthInCharsToPixels(characters), SWT.DEFAULT));
        text.addListener(SWT.Modify, event -> showChoices());
        return text;
    }

    private Combo combo(Composite parent, String id, String... words) {
        Combo combo = Ids.name(new Combo(parent, SWT.READ_ONLY | SWT.DROP_DOWN), "addsteps." + id);
        combo.setItems(words);
        combo.select(0);
        combo.addListener(SWT.Selection, event -> showChoices());
        return combo;
    }

    private static void unit(Composite parent, String words) {
        new Label(parent, SWT.NONE).setText(words);
    }

    /** Offers the loads that the project has now; what was chosen stays so. */
    void showProject(Project project) {
        List<String> ids = project.loads().stream().map(BenchLoad::id).toList();
        if (!ids.equals(List.copyOf(loads.keySet()))) {
            Map<String, Boolean> chosen = new LinkedHashMap<>();
            loads.forEach((id, button) -> chosen.put(id, button.getSelection()));
            loads.values().forEach(Button::dispose);
            loads.clear();
            for (String id : ids) {
                Button button = check(loadRow, "load." + id, id);
                button.setSelection(chosen.getOrDefault(id, false));
                loads.put(id, button);
            }
            loadRow.requestLayout();
        }
        showChoices();
    }

    void setReadOnly(boolean nowReadOnly) {
        readOnly = nowReadOnly;
        showChoices();
    }

    @Override
    public boolean setFocus() {
        return modes.get(Mode.STEREO).setFocus();
    }

    private void showChoices() {
        if (add == null) {
            return;
        }
        boolean distortion = end.getSelectionIndex() == 0;
        limit.setEnabled(distortion);
        measure.setEnabled(distortion);
        Stream.of(onTime, period, lowLevel).forEach(text -> text.setEnabled(burst.getSelection()));
        try {
            PlanMatrix matrix = matrix();
            int missing = page.project()
                    .map(project -> matrix.missingIn(project).size())
                    .orElse(0);
            preview.mention(said(matrix.size(), missing));
            add.setEnabled(missing > 0 && !readOnly);
        } catch (IllegalArgumentException refused) {
            preview.show(Severity.ERROR, Refusals.sentence(refused));
            add.setEnabled(false);
        }
    }

    private static String said(int size, int missing) {
        if (size == 0) {
            return Texts.text("addsteps.choose");
        }
        int there = size - missing;
        String added = missing == 0 ? Texts.text("addsteps.nothing") : Texts.counted("addsteps.adds", missing);
        return there == 0 ? added : added + " " + Texts.counted("addsteps.there", there);
    }

    private PlanMatrix matrix() {
        List<Mode> chosenModes = Stream.of(Mode.values())
                .filter(mode -> modes.get(mode).getSelection())
                .toList();
        List<String> chosenLoads = loads.entrySet().stream()
                .filter(each -> each.getValue().getSelection())
                .map(Map.Entry::getKey)
                .toList();
        EndPoint endPoint = end.getSelectionIndex() == 0
                ? new EndPoint.DistortionLimit(
                        ratio(Texts.text("addsteps.value.limit"), limit),
                        DistortionMeasure.values()[Math.max(0, measure.getSelectionIndex())])
                : new EndPoint.ClippingOnset();
        return new PlanMatrix(chosenModes, chosenLoads, supplyVolts(), stimuli(), endPoint, confirm.getSelection());
    }

    private List<Double> supplyVolts() {
        List<Double> all = new ArrayList<>();
        for (String word : volts.getText().strip().split("[\\s;]+")) {
            if (!word.isEmpty() && !word.equals("V")) {
                all.add(positive(
                        Texts.text("addsteps.value.supply"),
                        Measure.of(Unit.VOLT).read(word)));
            }
        }
        return all.stream().distinct().toList();
    }

    private List<Stimulus> stimuli() {
        double hertz = positive("frequency", frequency, Measure.of(Unit.HERTZ));
        List<Stimulus> stimuli = new ArrayList<>();
        if (steady.getSelection()) {
            stimuli.add(new Stimulus.ContinuousSine(hertz));
        }
        if (burst.getSelection()) {
            double on = positive("burst", onTime, Measure.milli(Unit.SECOND));
            double every = read(Texts.text("addsteps.value.period"), period, Measure.milli(Unit.SECOND));
            double low = read(Texts.text("addsteps.value.low"), lowLevel, Measure.of(Unit.DECIBEL));
            if (every <= on) {
                throw new IllegalArgumentException(Texts.text("addsteps.period.refused"));
            }
            if (low > 0 || low < -200) {
                throw new IllegalArgumentException(Texts.text("addsteps.low.refused"));
            }
            stimuli.add(new Stimulus.ToneBurst(hertz, on, every, low));
        }
        return stimuli;
    }

    private static double read(String name, Text text, Measure measure) {
        try {
            return measure.read(text.getText());
        } catch (IllegalArgumentException refused) {
            throw new IllegalArgumentException(Texts.text("addsteps.refused", name, refused.getMessage()), refused);
        }
    }

    private static double positive(String key, Text text, Measure measure) {
        String name = Texts.text("addsteps.value." + key);
        return positive(name, read(name, text, measure));
    }

    private static double positive(String name, double value) {
        if (value <= 0) {
            throw new IllegalArgumentException(Texts.text("addsteps.positive", name));
        }
        return value;
    }

    private static double ratio(String name, Text text) {
        double value = read(name, text, Measure.percentOfOne());
        if (value <= 0 || value > 1) {
            throw new IllegalArgumentException(Texts.text("addsteps.share", name));
        }
        return value;
    }

    private void addSteps() {
        PlanMatrix matrix = matrix();
        page.project().ifPresent(shown -> {
            int count = matrix.missingIn(shown).size();
            page.edit(Texts.counted("addsteps.edit", count), project -> {
                List<Step> plan = new ArrayList<>(project.plan());
                plan.addAll(matrix.missingIn(project));
                return project.withPlan(plan);
            });
        });
    }
}
