// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.RecordingSource;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.Recording;
import org.ohmstead.model.json.RecordingsFile;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/** Knows the captures of a folder by the list of recordings that lies beside them; in a running framework a service. */
@Component
public final class RecordingFolders implements RecordingSource {
    private static final Messages TEXTS = Messages.of(RecordingFolders.class);

    /** Makes the service, which keeps nothing. */
    public RecordingFolders() {
        // for the framework
    }

    /**
     * Returns the recordings of a subject's step.
     *
     * @throws MeasurementException when no folder is named, it has no list, or the list cannot be read
     */
    @Override
    public List<Recorded> recordings(Path folder, Subject subject) throws MeasurementException {
        if (folder.toString().isBlank()) {
            throw MeasurementException.of(() -> TEXTS.text("recordings.noFolder", ReplayJob.LIST_NAME));
        }
        Path list = folder.resolve(ReplayJob.LIST_NAME);
        if (!Files.isRegularFile(list)) {
            throw MeasurementException.of(() -> TEXTS.text("recordings.otherFolder", folder, ReplayJob.LIST_NAME));
        }
        List<Recorded> recorded = new ArrayList<>();
        try {
            for (Recording each : RecordingsFile.read(list).recordings()) {
                if (each.stepId().equals(subject.step().id())) {
                    recorded.add(recorded(folder, each));
                }
            }
        } catch (ProjectFileException unreadable) {
            throw MeasurementException.of(() -> why(list, unreadable), unreadable);
        }
        return List.copyOf(recorded);
    }

    /** Reads once more, so that what is wrong is said in the language that is spoken now: the log keeps it in English. */
    private static String why(Path list, ProjectFileException unreadable) {
        try {
            RecordingsFile.read(list);
            return unreadable.getMessage();
        } catch (ProjectFileException again) {
            return again.getMessage();
        }
    }

    private static Recorded recorded(Path folder, Recording each) {
        return new Recorded(
                folder.resolve(each.fileName()),
                each.driveDb(),
                each.voltsPerFullScale(),
                each.supplyVolts(),
                each.supplyAmps(),
                each.caseCelsius(),
                each.ambientCelsius(),
                each.recordedAt());
    }
}
