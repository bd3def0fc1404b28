// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.curves.study.NaiveScaling;
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** The power that the joint curve gives at any supply voltage into any load. */
final class WhatIfPart implements StudyPart {
    private static final Messages TEXTS = Messages.of(WhatIfPart.class);

    private static final int STEPS_PER_VOLT = 20;
    private static final int LEAST_VOLTS = 8;
    private static final int MOST_VOLTS = 18;
    private static final double LEAST_OHMS = 0.5;
    private static final int STEPS_PER_OCTAVE = 10;
    private static final int OCTAVES = 5;
    private static final int FIELD_WIDTH = 60;
    private static final int SCALE_WIDTH = 180;
    private static final int RESULT_WIDTH = 200;

    private final Composite pane;
    private final LineVolts line;
    private final Scale voltsScale;
    private final Text voltsField;
    private final Scale ohmsScale;
    private final Text ohmsField;
    private final Combo modes;
    private final StyledText result;
    private double loadOhms = 4;
    private InView view = InView.NOTHING;

    WhatIfPart(Composite parent, LineVolts line) {
        this.line = line;
        pane = new Composite(parent, SWT.NONE);
        Spacing.group(2)
                .margins(Spacing.TIGHT, Spacing.GAP)
                .spacing(2 * Spacing.MARGIN, Spacing.GAP)
                .applyTo(pane);
        Composite inputs = new Composite(pane, SWT.NONE);
        Spacing.group(4).applyTo(inputs);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.BEGINNING).applyTo(inputs);
        label(inputs, TEXTS.text("whatif.supply"));
        voltsScale = scale(inputs, "power.whatif.volts.scale", (MOST_VOLTS - LEAST_VOLTS) * STEPS_PER_VOLT);
        voltsField = field(inputs, "power.whatif.volts", line::set);
        label(inputs, "V");
        label(inputs, TEXTS.text("whatif.load"));
        ohmsScale = scale(inputs, "power.whatif.ohms.scale", OCTAVES * STEPS_PER_OCTAVE);
        ohmsField = field(inputs, "power.whatif.ohms", this::setOhms);
        label(inputs, "\u03a9");
        label(inputs, TEXTS.text("whatif.mode"));
        modes = Ids.name(new Combo(inputs, SWT.READ_ONLY), "power.whatif.mode");
        for (Mode mode : Mode.values()) {
            modes.add(Words.of(mode));
        }
        modes.select(Mode.STEREO.ordinal());
        GridDataFactory.fillDefaults().span(3, 1).applyTo(modes);
        result = Ids.name(
                new StyledText(pane, SWT.MULTI | SWT.WRAP | SWT.READ_ONLY | SWT.V_SCROLL), "power.whatif.result");
        result.setMargins(Spacing.GAP, Spacing.GAP, Spacing.GAP, Spacing.GAP);
        result.setLineSpacing(Spacing.TIGHT / 2);
        result.addTraverseListener(event ->
                event.doit |= event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        GridDataFactory.fillDefaults().grab(true, true).hint(RESULT_WIDTH, 1).applyTo(result);
        voltsScale.addSelectionListener(SelectionListener.widgetSelectedAdapter(
                event -> line.set(LEAST_VOLTS + voltsScale.getSelection() / (double) STEPS_PER_VOLT)));
        ohmsScale.addSelectionListener(
                SelectionListener.widgetSelectedAdapter(event -> setOhms(ohmsAt(ohmsScale.getSelection()))));
        modes.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> refresh()));
        line.listen(volts -> refresh());
    }

    private static void label(Composite parent, String words) {
        Label label = new Label(parent, SWT.NONE);
        label.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(label);
    }

    private static Scale scale(Composite parent, String id, int steps) {
        Scale scale = Ids.name(new Scale(parent, SWT.HORIZONTAL), id);
        scale.setMaximum(steps);
        scale.setPageIncrement(STEPS_PER_OCTAVE);
        GridDataFactory.fillDefaults()
                .hint(SCALE_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(scale);
        return scale;
    }

    private Text field(Composite parent, String id, DoubleConsumer read) {
        Text field = Ids.name(new Text(parent, SWT.BORDER | SWT.SINGLE | SWT.RIGHT), id);
        GridDataFactory.fillDefaults()
                .hint(FIELD_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(field);
        Runnable commit = () -> {
            Figures.read(field.getText()).ifPresent(read::accept);
            refresh();
        };
        field.addListener(SWT.DefaultSelection, event -> commit.run());
        field.addListener(SWT.FocusOut, event -> commit.run());
        return field;
    }

    /** Equal steps of the slide are equal ratios. */
    private static double ohmsAt(int step) {
        return Math.round(100 * LEAST_OHMS * Math.pow(2, step / (double) STEPS_PER_OCTAVE)) / 100.0;
    }

    private void setOhms(double ohms) {
        loadOhms = ohms;
        refresh();
    }

    @Override
    public String title() {
        return TEXTS.text("whatif.title");
    }

    @Override
    public Control control() {
        return pane;
    }

    @Override
    public void show(InView newView) {
        boolean first = view.study().isEmpty();
        view = newView;
        Optional<PowerStudy> study = view.study().flatMap(JointStudy::study);
        if (first && study.isPresent()) {
            PowerStudy.PlacedLoad load = study.get().loads().get(0);
            loadOhms = load.loadOhms();
            modes.select(load.mode().ordinal());
        }
        refresh();
    }

    private void refresh() {
        double supplyVolts = line.value().orElse(LEAST_VOLTS);
        write(voltsField, Figures.fixed(supplyVolts, 2));
        write(ohmsField, Numbers.shown(loadOhms));
        voltsScale.setSelection((int) Math.round((supplyVolts - LEAST_VOLTS) * STEPS_PER_VOLT));
        ohmsScale.setSelection((int) Math.round(STEPS_PER_OCTAVE * Math.log(loadOhms / LEAST_OHMS) / Math.log(2)));
        List<String> lines = view.study()
                .flatMap(joint -> joint.study()
                        .map(study -> lines(
                                study,
                                supplyVolts,
                                loadOhms,
                                Mode.values()[modes.getSelectionIndex()],
                                joint.confidence())))
                .orElse(List.of(
                        view.study().map(joint -> joint.findings().get(0)).orElse(view.whyNothing())));
        String text = String.join("\n", lines);
        if (!text.equals(result.getText())) {
            result.setText(text);
            result.setStyleRange(new StyleRange(0, lines.get(0).length(), null, null, SWT.BOLD));
        }
    }

    private static void write(Text field, String text) {
        if (!field.getText().equals(text)) {
            field.setText(text);
        }
    }

    /** Returns what there is to say: first the power, then how sure it is, and what follows. */
    static List<String> lines(PowerStudy study, double supplyVolts, double loadOhms, Mode mode, double confidence) {
        PowerPrediction prediction = study.predict(supplyVolts, loadOhms, mode);
        if (prediction instanceof PowerPrediction.Unknown unknown) {
            return List.of(TEXTS.text("whatif.unknown"), Numbers.inSentence(unknown.reason()));
        }
        PowerPrediction.Predicted predicted = (PowerPrediction.Predicted) prediction;
        List<String> lines = new ArrayList<>();
        lines.add(TEXTS.text("whatif.power", StudySheets.watts(predicted), Words.perWhat(mode), Coverage.words()));
        lines.add(StudySheets.intervals(predicted, confidence));
        String distance = predicted.distance().sentence();
        lines.add(
                distance.isEmpty()
                        ? TEXTS.text("whatif.within")
                        : TEXTS.text("whatif.beyond", Numbers.inSentence(distance)));
        study.percentPerVolt(supplyVolts, loadOhms, mode).map(WhatIfPart::slope).ifPresent(lines::add);
        NaiveScaling.of(study, Difference.supplyVolts(study), supplyVolts, loadOhms, mode)
                .map(Words::naive)
                .ifPresent(lines::add);
        return lines;
    }

    private static String slope(Estimate percent) {
        return TEXTS.text(
                "whatif.slope",
                Figures.stated(percent.value(), Coverage.expanded(percent.standardUncertainty()))
                        .text());
    }
}
