// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.signal.sound.ExpectedLevel;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** What a change of power should do to the level, and an estimate of the level in the free field. */
final class ChangePane {
    private static final double HEARD_DB = 1;
    private static final double CLEAR_DB = 3;
    private static final double TWICE_DB = 10;

    private final Composite area;
    private final NumberEntry from;
    private final NumberEntry to;
    private final NumberEntry sensitivity;
    private final NumberEntry metres;
    private final Label change;
    private final Label level;

    ChangePane(Composite parent) {
        area = new Composite(parent, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(area);
        Composite grid = new Composite(area, SWT.NONE);
        Spacing.group(6).applyTo(grid);
        Measure watts = Measure.of(Unit.WATT);
        from = new NumberEntry(grid, "sound.change.from", "change.from", watts, value -> value > 0, this::show);
        to = new NumberEntry(grid, "sound.change.to", "change.to", watts, value -> value > 0, this::show);
        sensitivity = new NumberEntry(
                grid,
                "sound.change.sensitivity",
                "change.sensitivity",
                Measure.named("dB, 1 W, 1 m"),
                value -> value > 0 && value < 200,
                this::show);
        metres = new NumberEntry(
                grid, "sound.change.metres", "change.metres", Measure.of(Unit.METRE), value -> value > 0, this::show);
        // Before there is anything to work out, which each of them would ask for.
        from.show(50);
        to.show(100);
        sensitivity.show(88);
        metres.show(1);
        change = sentence("sound.change.result");
        level = sentence("sound.change.level");
        show();
    }

    private Label sentence(String id) {
        Label label = Ids.name(new Label(area, SWT.WRAP), id);
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(label);
        return label;
    }

    Composite control() {
        return area;
    }

    private void show() {
        if (level == null) {
            return;
        }
        OptionalDouble before = from.value();
        OptionalDouble after = to.value();
        OptionalDouble loudspeaker = sensitivity.value();
        OptionalDouble distance = metres.value();
        change.setText(
                before.isPresent() && after.isPresent()
                        ? changeWords(ExpectedLevel.changeDb(before.getAsDouble(), after.getAsDouble()))
                        : Texts.say("change.incomplete"));
        level.setText(
                after.isPresent() && loudspeaker.isPresent() && distance.isPresent()
                        ? Texts.say(
                                "change.level",
                                Numbers.format(
                                        "%.1f",
                                        ExpectedLevel.freeFieldDb(
                                                loudspeaker.getAsDouble(),
                                                after.getAsDouble(),
                                                distance.getAsDouble())))
                        : "");
        if (area.getSize().x > 0) {
            area.layout();
        }
    }

    private static String changeWords(double changeDb) {
        double size = Math.abs(changeDb);
        String heard = "change.twice";
        if (size < HEARD_DB) {
            heard = "change.hardly";
        } else if (size < CLEAR_DB) {
            heard = "change.direct";
        } else if (size < TWICE_DB) {
            heard = "change.clear";
        }
        return Texts.say("change.result", Numbers.format("%+.2f", changeDb), Texts.say(heard));
    }
}
