// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.internal.Faults;
import org.ohmstead.measure.bench.internal.ReplayedBench;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/**
 * Gives back what was recorded before: for each level that is fed the capture that was taken at it, with what the meters showed then.
 * A level that was not recorded is refused, never made up.
 */
@Component
public final class ReplayedBenchDriver implements BenchDriver {
    private static final Messages TEXTS = Messages.of(ReplayedBenchDriver.class);

    private final RecordingSource source;

    /** Makes a driver of the recordings that a source knows. */
    @Activate
    public ReplayedBenchDriver(@Reference RecordingSource source) {
        this.source = source;
    }

    @Override
    public DriverInfo info() {
        return new DriverInfo(
                "org.ohmstead.bench.replayed",
                "1.0.0",
                TEXTS.text("replayed.name"),
                TEXTS.text("replayed.summary"),
                DriverInfo.Kind.REPLAYED,
                List.of(
                        new Setting.Text(
                                "folder", TEXTS.text("replayed.folder"), TEXTS.text("replayed.folder.help"), ""),
                        new Setting.Number(
                                "nearDb",
                                TEXTS.text("replayed.nearDb"),
                                TEXTS.text("replayed.nearDb.help"),
                                Unit.DECIBEL,
                                0.05,
                                0,
                                20)));
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException {
        Path folder;
        try {
            folder = Path.of(settings.text("folder"));
        } catch (InvalidPathException e) {
            throw Faults.because(e, "noPath", settings.text("folder"));
        }
        List<RecordingSource.Recorded> recordings = source.recordings(folder, subject);
        if (recordings.isEmpty()) {
            throw Faults.of("noRecordings", folder, subject.step().id());
        }
        return new ReplayedBench(subject, recordings, settings.number("nearDb"));
    }
}
