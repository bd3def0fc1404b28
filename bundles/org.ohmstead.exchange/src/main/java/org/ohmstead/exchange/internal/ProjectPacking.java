// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.exchange.PackManifest.PackedFile;
import org.ohmstead.exchange.ProjectPack.Packed;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogCopy;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;

/** One packing of a project. */
public final class ProjectPacking {
    private final Path project;
    private final Path target;
    private final String softwareVersion;
    private final Instant now;
    private final PackLimits limits;

    /** Prepares it. */
    public ProjectPacking(Path project, Path target, String softwareVersion, Instant now, PackLimits limits) {
        this.project = project.toAbsolutePath().normalize();
        this.target = target.toAbsolutePath().normalize();
        this.softwareVersion = softwareVersion;
        this.now = now;
        this.limits = limits;
    }

    /** Does it. */
    public Packed run(ExchangeProgress progress) throws ExchangeException {
        if (Files.exists(target)) {
            throw ExchangeException.refused(
                    "The file " + target + " is already there, and is not written over. Choose another name.");
        }
        if (!Files.isDirectory(target.getParent())) {
            throw ExchangeException.refused("The folder " + target.getParent()
                    + " does not exist. Make it, or choose another for the packed project.");
        }
        try {
            LoadedProject loaded = ProjectFile.read(project);
            Path log = project.resolve(TestLog.FILE_NAME);
            if (!Files.exists(log)) {
                return write(loaded, Optional.empty(), progress);
            }
            try (UnpackFolder folder = UnpackFolder.beside(target)) {
                Path copy = folder.path().resolve(TestLog.FILE_NAME);
                LogCopy.write(log, copy);
                return write(loaded, Optional.of(copy), progress);
            }
        } catch (ProjectFileException failure) {
            throw ExchangeException.refused("The project was not packed. " + failure.getMessage(), failure);
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog("The project was not packed. " + failure.getMessage(), failure);
        } catch (IOException failure) {
            throw ExchangeException.failed(
                    "The project " + project + " could not be packed (" + WholeFile.reason(failure)
                            + "). Check that you may read it, and that there is room where the file shall go.",
                    failure);
        }
    }

    private Packed write(LoadedProject loaded, Optional<Path> logCopy, ExchangeProgress progress)
            throws IOException, ExchangeException, TestLogException {
        VerifyReport log = logCopy.isPresent()
                ? verified(logCopy.get())
                : new VerifyReport(0, TestLog.FIRST_PREVIOUS_HASH, List.of());
        PackWriter writer = new PackWriter(project, logCopy, progress);
        writer.collect();
        PackManifest manifest = new PackManifest(
                PackManifest.FORMAT_VERSION,
                softwareVersion,
                now,
                loaded.project().title(),
                log.headHash(),
                log.entriesChecked(),
                writer.files());
        long bytes = manifest.files().stream().mapToLong(PackedFile::bytes).sum();
        WholeFile.write(target, "The packed project", stream -> writer.write(manifest, true, stream));
        // What packs better than an unpacking believes, such as long silence, goes in as it is.
        if (bytes > limits.freeBytes() && bytes > limits.inflationRatio() / 2 * Files.size(target)) {
            WholeFile.write(target, "The packed project", stream -> writer.write(manifest, false, stream));
        }
        return new Packed(target, CaptureStore.sha256(target), manifest, writer.leftOut());
    }

    /** Nothing is made from a log that was changed after it was written. */
    private static VerifyReport verified(Path copy) throws TestLogException, ExchangeException {
        try (TestLog log = TestLog.openReadOnly(copy)) {
            VerifyReport report = log.verify();
            if (!report.intact()) {
                throw ExchangeException.refused("The project was not packed, because its log is not whole: "
                        + report.faults().get(0).sentence() + " Restore the log from a backup first.");
            }
            // The copy has joined chains too; the head is that of the log's own.
            return new VerifyReport(report.entriesChecked(), log.headHash(), List.of());
        }
    }
}
