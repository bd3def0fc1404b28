// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.BackgroundWork;

/** The record, pasted or from a file, and what is known of it. */
final class IdentifyForm extends Composite {
    private static final Messages TEXTS = Messages.of(IdentifyForm.class);
    private static final int SETTLED_MILLIS = 250;
    private static final int LEAST_WIDTH = 120;
    private static final long MOST_BYTES = 4_000_000;
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 150;

    private final BackgroundWork work;
    private final Text record;
    private final OptionalQuantityField heat;
    private final CheckField cold;
    private final OptionalQuantityField air;
    private Runnable changed = () -> {};
    private Consumer<String> failed = sentence -> {};
    private long newest;

    IdentifyForm(Composite parent, BackgroundWork work) {
        super(parent, SWT.NONE);
        this.work = work;
        Spacing.group(1).applyTo(this);
        Composite head = new Composite(this, SWT.NONE);
        Spacing.group(2).applyTo(head);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(head);
        Label heading = new Label(head, SWT.NONE);
        heading.setText(TEXTS.text("record.heading"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(heading);
        Button open = Ids.name(new Button(head, SWT.PUSH), "identify.open");
        open.setText(TEXTS.text("record.open"));
        open.addListener(SWT.Selection, event -> ask());
        record = Ids.name(new Text(this, SWT.MULTI | SWT.BORDER | SWT.V_SCROLL | SWT.H_SCROLL), "identify.record");
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .hint(LEAST_WIDTH, LEAST_WIDTH)
                .applyTo(record);
        record.addListener(SWT.Modify, event -> soon());
        Label format = new Label(this, SWT.WRAP);
        format.setText(TEXTS.text("record.format"));
        format.setForeground(Tones.of(this).mutedText());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(format);
        FormSection form = new FormSection(this, "identify", "");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        heat = form.optionalQuantity("heat", TEXTS.text("record.heat"), Measure.of(Unit.WATT));
        heat.setHint(TEXTS.text("record.heat.hint"));
        heat.check(HeatBindings.positive());
        air = form.optionalQuantity("air", TEXTS.text("record.air"), Measure.of(Unit.CELSIUS));
        air.setHint(TEXTS.text("record.air.hint"));
        air.check(HeatBindings.within(COLDEST_CELSIUS, HOTTEST_CELSIUS, TEXTS.text("record.air.check")));
        cold = form.check("cold", TEXTS.text("record.cold"));
        cold.setHint(TEXTS.text("record.cold.hint"));
        heat.setValue(OptionalDouble.empty());
        air.setValue(OptionalDouble.empty());
        cold.setValue(true);
        heat.onCommit(value -> soon());
        air.onCommit(value -> soon());
        cold.onCommit(value -> soon());
        addDisposeListener(event -> newest++);
    }

    /** Tells of a change once typing has paused, so that a paste of lines is read once. */
    private void soon() {
        newest++;
        long number = newest;
        getDisplay().timerExec(SETTLED_MILLIS, () -> {
            if (number == newest && !isDisposed()) {
                changed.run();
            }
        });
    }

    private void ask() {
        FileDialog dialog = new FileDialog(getShell(), SWT.OPEN);
        dialog.setText(TEXTS.text("record.dialog"));
        dialog.setFilterNames(new String[] {TEXTS.text("record.tables"), TEXTS.text("record.all")});
        dialog.setFilterExtensions(new String[] {"*.csv;*.tsv;*.txt", "*.*"});
        String chosen = dialog.open();
        if (chosen != null) {
            open(Path.of(chosen));
        }
    }

    /** Reads a file in the background into the field. */
    void open(Path file) {
        work.start(
                TEXTS.text("record.reading", file.getFileName()),
                progress -> read(file),
                text -> {
                    if (!isDisposed()) {
                        record.setText(text);
                    }
                },
                failure -> {
                    if (!isDisposed()) {
                        failed.accept(failure.getMessage());
                    }
                });
    }

    private static String read(Path file) throws IOException {
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new IOException(TEXTS.text("record.large"));
            }
            return Files.readString(file, StandardCharsets.UTF_8).replace("\ufeff", "");
        } catch (CharacterCodingException strange) {
            throw new IOException(TEXTS.text("record.encoding", file.getFileName()), strange);
        } catch (IOException failure) {
            throw new IOException(TEXTS.text("record.unread", file.getFileName(), failure.getMessage()), failure);
        }
    }

    void onChange(Runnable handler) {
        changed = handler;
    }

    void onFailure(Consumer<String> handler) {
        failed = handler;
    }

    String record() {
        return record.getText();
    }

    OptionalDouble heatWatts() {
        return heat.value().orElse(OptionalDouble.empty());
    }

    OptionalDouble airCelsius() {
        return air.value().orElse(OptionalDouble.empty());
    }

    boolean startsCold() {
        return cold.value().orElse(true);
    }

    /** Writes the values anew, which follow the user's decimal sign. */
    void refresh() {
        heat.setValue(heatWatts());
        air.setValue(airCelsius());
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && record.setFocus();
    }
}
