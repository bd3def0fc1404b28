// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.IntegerField;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.form.QuantityField;
import org.ohmstead.workbench.look.Spacing;

/** The fields of a {@link Target}. */
final class TargetForm extends Composite {
    private static final Messages TEXTS = Messages.of(TargetForm.class);

    private static final double HOTTEST_AIR_CELSIUS = 120;
    private static final double COLDEST_AIR_CELSIUS = -60;
    private static final double LONGEST_SECONDS = 3600;

    private final FormSection left;
    private final FormSection right;
    private final QuantityField ohms;
    private final OptionalQuantityField error;
    private final OptionalQuantityField power;
    private final ChoiceField<Arrangement> arrangement;
    private OptionalQuantityField highest;
    private QuantityField ambient;
    private IntegerField parts;
    private QuantityField seconds;
    private Target target = Target.USUAL;
    private Consumer<Target> handler = changed -> {};

    /** Makes the first half; nothing may be asked of it before {@link #makeRest}. */
    TargetForm(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.group(2).equalWidth(false).applyTo(this);
        left = section();
        right = section();
        ohms = left.quantity("ohms", TEXTS.text("target.ohms"), Measure.of(Unit.OHM));
        ohms.check(TargetForm::positive);
        error = left.optionalQuantity("error", TEXTS.text("target.error"), Measure.percentOfOne());
        error.check(value -> value.ifPresent(ratio -> within(ratio, 0, 1, TEXTS.text("target.mustRatio"))));
        power = left.optionalQuantity("power", TEXTS.text("target.power"), Measure.of(Unit.WATT));
        power.check(value -> value.ifPresent(TargetForm::positive));
        arrangement = left.choice(
                "arrangement", TEXTS.text("target.arrangement"), List.of(Arrangement.values()), Arrangement::words);
    }

    /** Makes the second half, and shows the usual target. */
    void makeRest() {
        highest = right.optionalQuantity("highest", TEXTS.text("target.highest"), Measure.of(Unit.HERTZ));
        highest.check(value -> value.ifPresent(TargetForm::positive));
        ambient = right.quantity("ambient", TEXTS.text("target.ambient"), Measure.of(Unit.CELSIUS));
        ambient.check(
                value -> within(value, COLDEST_AIR_CELSIUS, HOTTEST_AIR_CELSIUS, TEXTS.text("target.mustCelsius")));
        parts = right.integer("parts", TEXTS.text("target.parts"), 1, Target.MOST_PARTS);
        seconds = right.quantity("seconds", TEXTS.text("target.seconds"), Measure.of(Unit.SECOND));
        seconds.check(value -> within(value, 0.1, LONGEST_SECONDS, TEXTS.text("target.mustSeconds")));
        hints();
        listen(ohms, Target::withOhms);
        listen(error, Target::withErrorLimitRatio);
        listen(power, Target::withPowerWatts);
        listen(arrangement, Target::withArrangement);
        listen(highest, Target::withHighestHz);
        listen(ambient, Target::withAmbientCelsius);
        listen(parts, Target::withMostParts);
        listen(seconds, Target::withTimeLimitSeconds);
        setTarget(target);
    }

    /** How a field's value goes into a target. */
    private interface With<T> {
        Target apply(Target target, T value);
    }

    private FormSection section() {
        FormSection section = new FormSection(this, "design", "");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(section);
        return section;
    }

    private void hints() {
        error.setHint(TEXTS.text("target.errorHint"));
        power.setHint(TEXTS.text("target.powerHint"));
        arrangement.setHint(TEXTS.text("target.arrangementHint"));
        highest.setHint(TEXTS.text("target.highestHint"));
        ambient.setHint(TEXTS.text("target.ambientHint"));
        parts.setHint(TEXTS.text("target.partsHint"));
        seconds.setHint(TEXTS.text("target.secondsHint"));
    }

    private <T> void listen(Field<T> field, With<T> with) {
        field.onCommit(value -> {
            target = with.apply(target, value);
            handler.accept(target);
        });
    }

    private static void positive(double value) {
        if (!(value > 0)) {
            throw new IllegalArgumentException(TEXTS.text("target.mustPositive"));
        }
    }

    private static void within(double value, double lowest, double highest, String sentence) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(sentence);
        }
    }

    /** Has someone told of what the user changes. */
    void onChange(Consumer<Target> newHandler) {
        handler = newHandler;
    }

    Target target() {
        return target;
    }

    /** Shows another target, without telling anyone. */
    void setTarget(Target newTarget) {
        target = newTarget;
        show(ohms, Target::ohms);
        show(error, Target::errorLimitRatio);
        show(power, Target::powerWatts);
        show(arrangement, Target::arrangement);
        show(highest, Target::highestHz);
        show(ambient, Target::ambientCelsius);
        show(parts, Target::mostParts);
        show(seconds, Target::timeLimitSeconds);
    }

    private <T> void show(Field<T> field, Function<Target, T> get) {
        field.setValue(get.apply(target));
    }

    /** Commits what is typed; returns whether all fields hold a value. */
    boolean settled() {
        boolean settled = ohms.commit() & error.commit() & power.commit() & highest.commit();
        return settled & ambient.commit() & parts.commit() & seconds.commit();
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && ohms.control().setFocus();
    }
}
