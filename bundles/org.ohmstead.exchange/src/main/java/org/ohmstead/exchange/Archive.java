// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ohmstead.exchange.internal.CaptureUses;
import org.ohmstead.exchange.internal.PackReader;
import org.ohmstead.exchange.internal.WholeFile;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Messages;

/**
 * Archives of a project: a {@link ProjectPack} in a folder of the user's choice, read back and checked before the log says that it is
 * there. Captures may be taken out of the project then, and brought back later; their entries stay in the log either way.
 */
public final class Archive {
    private static final Messages TEXTS = Messages.of(Archive.class);
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);
    private static final String PROJECT_SUFFIX = ".ohmstead";
    private static final int MOST_IN_ONE_ENTRY = 20_000;

    private Archive() {}

    /** Which captures are deleted from the project once they are in the archive. */
    public sealed interface TakeOut {
        /** None. */
        record Nothing() implements TakeOut {}

        /** Those that only voided entries name. */
        record Voided() implements TakeOut {}

        /**
         * Those of which every reading was taken before a day begins, in UTC.
         *
         * @param day the day
         */
        record Before(LocalDate day) implements TakeOut {}
    }

    /**
     * What was archived.
     *
     * @param file the archive
     * @param sha256 hash of its content, 64 hexadecimal digits
     * @param entryIds entries of the log that say so; one, or more when very many captures were taken out
     * @param takenOut how many captures were deleted from the project
     * @param freedBytes how many bytes that gave back
     * @param leftOut what of the project is not in the archive, each a sentence
     * @param notDeleted what could not be deleted although it is in the archive, each a sentence
     */
    public record Report(
            Path file,
            String sha256,
            List<String> entryIds,
            int takenOut,
            long freedBytes,
            List<String> leftOut,
            List<String> notDeleted) {
        /** Copies the lists. */
        public Report {
            entryIds = List.copyOf(entryIds);
            leftOut = List.copyOf(leftOut);
            notDeleted = List.copyOf(notDeleted);
        }
    }

    /**
     * Archives a project. A capture is deleted only after the archive was read back from the disk with the capture in it, and after
     * the log says so.
     *
     * @param projectFolder the project's folder, locked by the caller
     * @param log its log, open for adding
     * @param archiveFolder where the archive goes; must exist
     * @param takeOut which captures are deleted from the project
     * @param who archives it, and with which version of the software
     * @param progress hears how far it is
     * @throws ExchangeException when it fails; then no capture was deleted before the log says in which archive it is
     */
    public static Report make(
            Path projectFolder, TestLog log, Path archiveFolder, TakeOut takeOut, Who who, ExchangeProgress progress)
            throws ExchangeException {
        Path project = projectFolder.toAbsolutePath().normalize();
        Path target = archiveFolder.resolve(name(project) + "-" + STAMP.format(who.now()) + ProjectPack.SUFFIX);
        ProjectPack.Packed packed = ProjectPack.pack(project, target, who.softwareVersion(), progress);
        PackManifest manifest = ProjectPack.check(target, PackLimits.USUAL, ExchangeProgress.SILENT);
        try {
            Map<String, List<Path>> out = chosen(project, log, takeOut, manifest);
            return record(packed, log, out, who);
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("archive.unsaid", target, failure.getMessage()), failure);
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("archive.unlisted", target, WholeFile.reason(failure)), failure);
        }
    }

    /**
     * Who archives.
     *
     * @param name of the person; may be empty
     * @param softwareVersion version of the software
     * @param now the time that the archive's name holds
     */
    public record Who(String name, String softwareVersion, Instant now) {}

    private static String name(Path project) {
        String name = String.valueOf(project.getFileName());
        String bare = name.endsWith(PROJECT_SUFFIX) ? name.substring(0, name.length() - PROJECT_SUFFIX.length()) : name;
        return bare.isEmpty() ? "project" : bare;
    }

    private static Map<String, List<Path>> chosen(Path project, TestLog log, TakeOut takeOut, PackManifest manifest)
            throws TestLogException, IOException {
        Set<String> archived = new HashSet<>();
        manifest.files().forEach(file -> archived.add(file.sha256()));
        CaptureUses uses = CaptureUses.of(log);
        Map<String, List<Path>> files = CaptureUses.files(project);
        files.keySet()
                .removeIf(hash -> !archived.contains(hash)
                        || uses.uses().get(hash) == null
                        || !chosen(uses.uses().get(hash), takeOut));
        return files;
    }

    private static boolean chosen(CaptureUses.Use use, TakeOut takeOut) {
        if (takeOut instanceof TakeOut.Voided) {
            return !use.counts();
        }
        return takeOut instanceof TakeOut.Before before
                && use.latest()
                        .isBefore(before.day().atStartOfDay(ZoneOffset.UTC).toInstant());
    }

    private static Report record(ProjectPack.Packed packed, TestLog log, Map<String, List<Path>> out, Who who)
            throws TestLogException {
        List<String> hashes = List.copyOf(out.keySet());
        List<String> entryIds = new ArrayList<>();
        List<String> notDeleted = new ArrayList<>();
        int takenOut = 0;
        long freed = 0;
        int from = 0;
        do {
            List<String> some = hashes.subList(from, Math.min(hashes.size(), from + MOST_IN_ONE_ENTRY));
            LogEntry entry = log.archive(new ArchiveNote(
                    packed.file().getFileName().toString(),
                    packed.sha256(),
                    packed.manifest().headHash(),
                    some,
                    who.name()));
            entryIds.add(entry.id());
            for (String hash : some) {
                for (Path file : out.get(hash)) {
                    try {
                        long bytes = Files.size(file);
                        Files.delete(file);
                        freed += bytes;
                        takenOut++;
                    } catch (IOException failure) {
                        notDeleted.add(TEXTS.text("archive.notDeleted", file, WholeFile.reason(failure)));
                    }
                }
            }
            from += some.size();
        } while (from < hashes.size());
        return new Report(packed.file(), packed.sha256(), entryIds, takenOut, freed, packed.leftOut(), notDeleted);
    }

    /**
     * What came back from an archive.
     *
     * @param restored captures that were missing and are there now
     * @param mended captures that had changed and are as recorded again
     * @param alreadyThere captures that were there as they should
     * @param notNamed captures of the archive that this project's log does not name, and that were left in it
     */
    public record Restored(int restored, int mended, int alreadyThere, int notNamed) {}

    /**
     * Brings captures back from an archive, or from any packed project that holds them. Each must have the content that the log says.
     *
     * @param archive the archive
     * @param projectFolder the project's folder, locked by the caller
     * @param log its log
     * @param limits how much is read at most
     * @param progress hears how far it is
     * @throws ExchangeException when the archive cannot be read or is not what it says; captures that came back before are good
     */
    public static Restored restore(
            Path archive, Path projectFolder, TestLog log, PackLimits limits, ExchangeProgress progress)
            throws ExchangeException {
        Path project = projectFolder.toAbsolutePath().normalize();
        Set<String> named;
        try {
            named = CaptureUses.of(log).uses().keySet();
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("archive.notRestored", failure.getMessage()), failure);
        }
        return PackReader.with(archive, limits, pack -> {
            int[] counts = new int[4];
            List<PackManifest.PackedFile> captures = pack.captures();
            for (int index = 0; index < captures.size(); index++) {
                progress.stopIfCancelled();
                progress.step(index, captures.size(), captures.get(index).name());
                counts[bring(pack, captures.get(index), project, named)]++;
            }
            progress.step(captures.size(), captures.size(), "");
            return new Restored(counts[0], counts[1], counts[2], counts[3]);
        });
    }

    private static int bring(PackReader pack, PackManifest.PackedFile capture, Path project, Set<String> named)
            throws IOException, ExchangeException {
        if (!named.contains(capture.sha256())) {
            return 3;
        }
        Path target = project.resolve(capture.name());
        boolean there = Files.exists(target);
        if (there && sameContent(target, capture.sha256())) {
            return 2;
        }
        Files.createDirectories(target.getParent());
        WholeFiles.<ExchangeException>write(target, stream -> pack.copy(capture, stream));
        return there ? 1 : 0;
    }

    private static boolean sameContent(Path file, String sha256) throws IOException {
        try {
            return CaptureStore.sha256(file).equals(sha256);
        } catch (TestLogException failure) {
            throw new IOException(failure.getMessage(), failure);
        }
    }
}
