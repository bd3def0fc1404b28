// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.signal.sound.ExposureCaution;
import org.ohmstead.signal.sound.ExposureCriterion;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** After how long a level reaches the limits that rules for workplaces state; a caution, with each rule named. */
final class ExposurePane {
    private static final int TIME_CHARACTERS = 13;

    private final Composite area;
    private final NumberEntry level;
    private final List<Label> times = new ArrayList<>();

    ExposurePane(Composite parent) {
        area = new Composite(parent, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(area);
        Composite first = new Composite(area, SWT.NONE);
        Spacing.group(3).applyTo(first);
        level = new NumberEntry(
                first,
                "sound.exposure.level",
                "exposure.level",
                Measure.of(Unit.DECIBEL),
                value -> value > 0 && value < 200,
                this::show);
        level.control().setToolTipText(Texts.say("exposure.level.hint"));
        Composite grid = new Composite(area, SWT.NONE);
        Spacing.group(2).applyTo(grid);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(grid);
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            Label time = Ids.name(
                    new Label(grid, SWT.RIGHT),
                    "sound.exposure."
                            + criterion.name().toLowerCase(Locale.ROOT).replace('_', '-'));
            time.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
            GridDataFactory.fillDefaults()
                    .align(SWT.FILL, SWT.BEGINNING)
                    .hint(new PixelConverter(time).convertWidthInCharsToPixels(TIME_CHARACTERS), SWT.DEFAULT)
                    .applyTo(time);
            times.add(time);
            Label source = new Label(grid, SWT.WRAP);
            source.setText(criterion.source(Texts.locale()));
            GridDataFactory.fillDefaults()
                    .grab(true, false)
                    .hint(200, SWT.DEFAULT)
                    .applyTo(source);
        }
        Label about = new Label(area, SWT.WRAP);
        about.setText(ExposureCaution.aboutLimits(Texts.locale()));
        about.setForeground(Tones.of(about).mutedText());
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(about);
        level.show(100);
    }

    Composite control() {
        return area;
    }

    /** Takes a level over from the readings. */
    void take(double levelDbA) {
        level.show(levelDbA);
    }

    private void show() {
        OptionalDouble value = level.value();
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            times.get(criterion.ordinal()).setText(value.isPresent() ? time(criterion, value.getAsDouble()) : "\u2013");
        }
    }

    private static String time(ExposureCriterion criterion, double levelDbA) {
        double seconds = criterion.seconds(levelDbA);
        return seconds > 0 ? ExposureCaution.duration(seconds, Texts.locale()) : Texts.say("exposure.never");
    }
}
