// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Severity;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.MicrophoneCalibration;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.BackgroundWork;

/** Measures a level from a recording, by a recording of a calibrator, and hands it over for the table. */
final class RecordingPane {
    private final Composite area;
    private final BackgroundWork work;
    private final Consumer<RecordedLevel> taker;
    private final NumberEntry calibratorDb;
    private final NumberEntry limitsDb;
    private final NumberEntry frequencyHz;
    private final NumberEntry driveDb;
    private final Combo weighting;
    private final Text position;
    private final Button measure;
    private final MessageLine message;
    private Optional<Path> calibration = Optional.empty();
    private Optional<Path> recording = Optional.empty();
    private boolean changeable;

    /**
     * Makes the pane.
     *
     * @param questions asks for a file, given a title
     * @param taker gets what was measured
     */
    RecordingPane(
            Composite parent,
            BackgroundWork work,
            Function<String, Optional<Path>> questions,
            Consumer<RecordedLevel> taker) {
        this.work = work;
        this.taker = taker;
        area = new Composite(parent, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(area);
        Composite files = row(2);
        file(files, "recording.calibration", "sound.recording.calibration", questions, path -> calibration = path);
        file(files, "recording.file", "sound.recording.file", questions, path -> recording = path);
        Composite numbers = row(6);
        Measure decibels = Measure.of(Unit.DECIBEL);
        calibratorDb = new NumberEntry(
                numbers,
                "sound.recording.db",
                "recording.db",
                decibels,
                value -> value > 0 && value < 200,
                this::enable);
        limitsDb = new NumberEntry(
                numbers,
                "sound.recording.limits",
                "recording.limits",
                decibels,
                value -> value >= 0 && value <= 10,
                this::enable);
        frequencyHz = new NumberEntry(
                numbers,
                "sound.recording.frequency",
                "column.frequency",
                Measure.of(Unit.HERTZ),
                value -> value > 0 && value < 96_000,
                this::enable);
        driveDb = new NumberEntry(
                numbers,
                "sound.recording.drive",
                "column.drive",
                decibels,
                value -> value <= 0 && value > -200,
                this::enable);
        Composite last = row(4);
        label(last, "column.weighting");
        weighting = Ids.name(new Combo(last, SWT.DROP_DOWN | SWT.READ_ONLY), "sound.recording.weighting");
        weighting.setItems("A", "C", "Z");
        weighting.select(1);
        weighting.setToolTipText(Texts.say("hover.weighting"));
        label(last, "column.position");
        position = Ids.name(new Text(last, SWT.BORDER | SWT.SINGLE), "sound.recording.position");
        GridDataFactory.fillDefaults().grab(true, false).hint(100, SWT.DEFAULT).applyTo(position);
        measure = Ids.name(new Button(area, SWT.PUSH), "sound.recording.measure");
        measure.setText(Texts.say("recording.measure"));
        measure.addListener(SWT.Selection, event -> measure());
        message = new MessageLine(area, "sound.recording.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        calibratorDb.show(MicrophoneCalibration.USUAL_LEVEL_DB);
        limitsDb.show(0.4);
        frequencyHz.show(50);
        message.mention(Texts.say("recording.hint"));
        enable();
    }

    private Composite row(int columns) {
        Composite row = new Composite(area, SWT.NONE);
        Spacing.group(columns).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        return row;
    }

    private static void label(Composite row, String key) {
        Label label = new Label(row, SWT.NONE);
        label.setText(Texts.say(key));
        GridDataFactory.swtDefaults().applyTo(label);
    }

    private void file(
            Composite row,
            String key,
            String id,
            Function<String, Optional<Path>> questions,
            Consumer<Optional<Path>> chosen) {
        Button button = Ids.name(new Button(row, SWT.PUSH), id);
        button.setText(Texts.say(key));
        button.setToolTipText(Texts.say(key + ".hint"));
        Label name = Ids.name(new Label(row, SWT.NONE), id + ".name");
        name.setText(Texts.say("recording.nofile"));
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .hint(80, SWT.DEFAULT)
                .applyTo(name);
        button.addListener(SWT.Selection, event -> {
            Optional<Path> path = questions.apply(Texts.say(key + ".hint"));
            path.ifPresent(there -> {
                chosen.accept(path);
                name.setText(there.getFileName().toString().replace("&", "&&"));
                name.setToolTipText(there.toString());
            });
            enable();
        });
    }

    Composite control() {
        return area;
    }

    void setChangeable(boolean newChangeable) {
        changeable = newChangeable;
        enable();
    }

    private void enable() {
        if (measure != null) {
            measure.setEnabled(changeable
                    && calibration.isPresent()
                    && recording.isPresent()
                    && calibratorDb.value().isPresent()
                    && limitsDb.value().isPresent()
                    && frequencyHz.value().isPresent());
        }
    }

    private void measure() {
        RecordedLevel.Order order = new RecordedLevel.Order(
                calibration.orElseThrow(),
                calibratorDb.value().orElseThrow(),
                limitsDb.value().orElseThrow(),
                recording.orElseThrow(),
                FrequencyWeighting.valueOf(weighting.getText()),
                frequencyHz.value().orElseThrow(),
                driveDb.control().getText().isBlank() ? OptionalDouble.empty() : driveDb.value(),
                position.getText().strip());
        measure.setEnabled(false);
        work.start(Texts.say("work.measure"), progress -> RecordedLevel.of(order), this::took, this::failed);
    }

    private void took(RecordedLevel level) {
        if (area.isDisposed()) {
            return;
        }
        enable();
        String words = Texts.say(
                "recording.found",
                Numbers.format("%.1f", level.levels().equivalentDb()),
                level.levels().weighting().name(),
                Numbers.format("%.1f", level.levels().highestFastDb()),
                Numbers.format("%.1f", level.levels().peakCDb()),
                Numbers.format("%.2f", 2 * level.calibration().standardUncertaintyDb()));
        if (level.clipped()) {
            message.show(Severity.WARNING, Texts.say("recording.clipped") + " " + words);
        } else {
            message.show(Severity.NOTE, words);
        }
        taker.accept(level);
    }

    private void failed(Exception failure) {
        if (!area.isDisposed()) {
            enable();
            message.show(Severity.ERROR, String.valueOf(failure.getMessage()));
        }
    }
}
