// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.List;
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
import org.ohmstead.workbench.form.PercentField;
import org.ohmstead.workbench.form.QuantityField;
import org.ohmstead.workbench.look.Spacing;

/** The fields of a {@link BankWish}. */
final class BankForm extends Composite {
    private static final Messages TEXTS = Messages.of(BankForm.class);

    private static final double LONGEST_SECONDS = 3600;
    private static final double SHORTEST_SECONDS = 0.1;

    private final PercentField tolerance;
    private final ChoiceField<BankWish.Power> power;
    private final IntegerField parts;
    private final QuantityField seconds;
    private BankWish wish = BankWish.USUAL;

    BankForm(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.group(2).applyTo(this);
        FormSection left = section();
        FormSection right = section();
        tolerance = left.percent("tolerance", TEXTS.text("bank.tolerance"));
        tolerance.check(value -> within(value, 0, 1, TEXTS.text("bank.mustRatio")));
        power = left.choice("power", TEXTS.text("bank.power"), List.of(BankWish.Power.values()), BankWish.Power::words);
        power.setHint(TEXTS.text("bank.powerHint"));
        parts = right.integer("parts", TEXTS.text("bank.parts"), 1, BankWish.MOST_PARTS);
        seconds = right.quantity("seconds", TEXTS.text("bank.seconds"), Measure.of(Unit.SECOND));
        seconds.check(value -> within(value, SHORTEST_SECONDS, LONGEST_SECONDS, TEXTS.text("bank.mustSeconds")));
        listen(tolerance, BankWish::withToleranceRatio);
        listen(power, BankWish::withPower);
        listen(parts, BankWish::withMostParts);
        listen(seconds, BankWish::withTimeLimitSeconds);
        show();
    }

    /** How a field's value goes into a wish. */
    private interface With<T> {
        BankWish apply(BankWish wish, T value);
    }

    private FormSection section() {
        FormSection section = new FormSection(this, "bank", "");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(section);
        return section;
    }

    private <T> void listen(Field<T> field, With<T> with) {
        field.onCommit(value -> wish = with.apply(wish, value));
    }

    private static void within(double value, double lowest, double highest, String sentence) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(sentence);
        }
    }

    BankWish wish() {
        return wish;
    }

    /** Writes the values anew, which follow the user's decimal sign. */
    void show() {
        tolerance.setValue(wish.toleranceRatio());
        power.setValue(wish.power());
        parts.setValue(wish.mostParts());
        seconds.setValue(wish.timeLimitSeconds());
    }

    /** Commits what is typed; returns whether all fields hold a value. */
    boolean settled() {
        return tolerance.commit() & parts.commit() & seconds.commit();
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && tolerance.control().setFocus();
    }
}
