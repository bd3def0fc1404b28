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
import org.ohmstead.units.text.Messages;

/** One packing of a project. */
public final class ProjectPacking {
    private static final Messages TEXTS = Messages.of(ProjectPacking.class);
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
            throw ExchangeException.refused(TEXTS.text("pack.there", target));
        }
        if (!Files.isDirectory(target.getParent())) {
            throw ExchangeException.refused(TEXTS.text("pack.noFolder", target.getParent()));
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
            throw ExchangeException.refused(TEXTS.text("pack.notPacked", failure.getMessage()), failure);
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("pack.notPacked", failure.getMessage()), failure);
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("pack.failed", project, WholeFile.reason(failure)), failure);
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
        WholeFile.write(target, TEXTS.text("pack.written"), stream -> writer.write(manifest, true, stream));
        // What packs better than an unpacking believes, such as long silence, goes in as it is.
        if (bytes > limits.freeBytes() && bytes > limits.inflationRatio() / 2 * Files.size(target)) {
            WholeFile.write(target, TEXTS.text("pack.written"), stream -> writer.write(manifest, false, stream));
        }
        return new Packed(target, CaptureStore.sha256(target), manifest, writer.leftOut());
    }

    /** Nothing is made from a log that was changed after it was written. */
    private static VerifyReport verified(Path copy) throws TestLogException, ExchangeException {
        try (TestLog log = TestLog.openReadOnly(copy)) {
            VerifyReport report = log.verify();
            if (!report.intact()) {
                throw ExchangeException.refused(
                        TEXTS.text("pack.logBroken", report.faults().get(0).sentence()));
            }
            // The copy has joined chains too; the head is that of the log's own.
            return new VerifyReport(report.entriesChecked(), log.headHash(), List.of());
        }
    }
}
