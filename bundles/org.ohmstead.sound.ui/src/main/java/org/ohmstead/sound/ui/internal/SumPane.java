// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.signal.sound.Level;
import org.ohmstead.signal.sound.LevelSums;
import org.ohmstead.signal.sound.Phasor;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** Sums of levels that are typed in, and what is left without a background. */
final class SumPane {
    private final Composite area;
    private final Text levels;
    private final NumberEntry phase;
    private final NumberEntry background;
    private final Label result;

    SumPane(Composite parent) {
        area = new Composite(parent, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(area);
        Composite first = new Composite(area, SWT.NONE);
        Spacing.group(2).applyTo(first);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(first);
        Label label = new Label(first, SWT.NONE);
        label.setText(Texts.say("sum.levels"));
        GridDataFactory.swtDefaults().applyTo(label);
        levels = Ids.name(new Text(first, SWT.BORDER | SWT.SINGLE), "sound.sum.levels");
        GridDataFactory.fillDefaults().grab(true, false).hint(120, SWT.DEFAULT).applyTo(levels);
        levels.setToolTipText(Texts.say("sum.levels.hint"));
        Composite second = new Composite(area, SWT.NONE);
        Spacing.group(6).applyTo(second);
        phase = new NumberEntry(
                second, "sound.sum.phase", "sum.phase", Measure.named("\u00b0"), Double::isFinite, this::show);
        background = new NumberEntry(
                second,
                "sound.sum.background",
                "sum.background",
                Measure.of(Unit.DECIBEL),
                Double::isFinite,
                this::show);
        result = Ids.name(new Label(area, SWT.WRAP), "sound.sum.result");
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(result);
        phase.show(0);
        levels.addListener(SWT.Modify, event -> show());
        levels.setText("85 88 90");
    }

    Composite control() {
        return area;
    }

    private void show() {
        if (result != null) {
            result.setText(words());
            area.layout();
        }
    }

    private String words() {
        List<Double> values = new ArrayList<>();
        Measure decibels = Measure.of(Unit.DECIBEL);
        for (String part : levels.getText().strip().split("[\\s;]+")) {
            try {
                values.add(decibels.read(part));
            } catch (IllegalArgumentException unread) {
                return Texts.say("sum.unread", part);
            }
        }
        double sumDb = LevelSums.incoherentDb(values);
        List<String> sentences = new ArrayList<>();
        sentences.add(Texts.say("sum.incoherent", Numbers.format("%.2f", sumDb)));
        if (values.size() == 2 && phase.value().isPresent()) {
            sentences.add(coherent(values, phase.value().getAsDouble()));
        }
        OptionalDouble quiet = background.value();
        if (quiet.isPresent()) {
            sentences.add(
                    quiet.getAsDouble() < sumDb
                            ? Texts.say(
                                    sumDb - quiet.getAsDouble() < 3 ? "sum.near" : "sum.less",
                                    Numbers.format(
                                            "%.2f",
                                            LevelSums.withoutBackground(
                                                            Level.exact(sumDb), Level.exact(quiet.getAsDouble()))
                                                    .valueDb()))
                            : Texts.say("sum.hidden"));
        }
        return String.join("\n", sentences);
    }

    private static String coherent(List<Double> values, double degrees) {
        try {
            double sumDb =
                    LevelSums.coherentDb(List.of(new Phasor(values.get(0), 0), new Phasor(values.get(1), degrees)));
            return Texts.say("sum.coherent", Numbers.format("%.2f", sumDb));
        } catch (IllegalArgumentException nothingLeft) {
            return Texts.say("sum.cancelled");
        }
    }
}
