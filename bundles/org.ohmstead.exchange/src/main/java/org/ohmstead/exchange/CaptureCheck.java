// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.ohmstead.exchange.internal.CaptureUses;
import org.ohmstead.exchange.internal.WholeFile;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/** Checks every capture that the log names: whether its file is there, and whether its content still gives the hash in the log. */
public final class CaptureCheck {
    private static final Messages TEXTS = Messages.of(CaptureCheck.class);

    private CaptureCheck() {}

    /** How it stands with a capture. */
    public enum State {
        /** There, with the content that the log says. */
        PRESENT,
        /** Not there, and in no archive that the log knows of. */
        MISSING,
        /** There, with another content. */
        CHANGED,
        /** Taken out into an archive that the log names. */
        ARCHIVED,
        /** Not here, because only entries that were joined from another bench's log name it. */
        ELSEWHERE,
        /** A file in the store that no entry names. */
        UNNAMED
    }

    /**
     * A capture that is not simply there as it should.
     *
     * @param sha256 hash of its content, 64 hexadecimal digits; empty for a file whose name holds none
     * @param state how it stands
     * @param entryId first entry that names it; empty when none does
     * @param sentence what is the matter, and what to do where something is
     */
    public record Finding(String sha256, State state, String entryId, String sentence) {}

    /**
     * What a check found.
     *
     * @param counts how many captures there are of each state
     * @param findings all but those that are there as they should
     */
    public record Report(Map<State, Integer> counts, List<Finding> findings) {
        /** Copies both. */
        public Report {
            counts = Map.copyOf(counts);
            findings = List.copyOf(findings);
        }

        /** Returns how many captures are in a state. */
        public int count(State state) {
            return counts.getOrDefault(state, 0);
        }

        /** Returns whether no capture is missing or changed. */
        public boolean whole() {
            return count(State.MISSING) == 0 && count(State.CHANGED) == 0;
        }
    }

    /**
     * Checks the captures of a project. Every file is read.
     *
     * @param projectFolder the project's folder
     * @param log its log
     * @param progress hears how far it is
     * @throws ExchangeException when the log or the store cannot be read
     */
    public static Report run(Path projectFolder, TestLog log, ExchangeProgress progress) throws ExchangeException {
        Path project = projectFolder.toAbsolutePath().normalize();
        try {
            CaptureUses uses = CaptureUses.of(log);
            Map<String, List<Path>> files = CaptureUses.files(project);
            Map<State, Integer> counts = new EnumMap<>(State.class);
            List<Finding> findings = new ArrayList<>();
            TreeSet<String> hashes = new TreeSet<>(uses.uses().keySet());
            hashes.addAll(files.keySet());
            long done = 0;
            for (String hash : hashes) {
                progress.stopIfCancelled();
                progress.step(done++, hashes.size(), hash.isEmpty() ? TEXTS.text("capture.nameless") : hash);
                for (Finding finding : look(project, hash, uses, files.getOrDefault(hash, List.of()))) {
                    counts.merge(finding.state(), 1, Integer::sum);
                    if (finding.state() != State.PRESENT) {
                        findings.add(finding);
                    }
                }
            }
            progress.step(hashes.size(), hashes.size(), "");
            return new Report(counts, findings);
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("capture.unchecked", failure.getMessage()), failure);
        } catch (IOException failure) {
            throw ExchangeException.failed(
                    TEXTS.text("capture.unread", projectFolder, WholeFile.reason(failure)), failure);
        }
    }

    private static List<Finding> look(Path project, String hash, CaptureUses uses, List<Path> files)
            throws TestLogException {
        CaptureUses.Use use = uses.uses().get(hash);
        List<Finding> findings = new ArrayList<>();
        if (use == null) {
            for (Path file : files) {
                findings.add(
                        new Finding(hash, State.UNNAMED, "", TEXTS.text("capture.unnamed", project.relativize(file))));
            }
            return findings;
        }
        if (files.isEmpty()) {
            findings.add(absent(hash, use, uses.archive(hash)));
            return findings;
        }
        for (Path file : files) {
            boolean same = CaptureStore.sha256(file).equals(hash);
            findings.add(new Finding(
                    hash,
                    same ? State.PRESENT : State.CHANGED,
                    use.firstEntry(),
                    same ? "" : TEXTS.text("capture.changed", project.relativize(file), named(use))));
        }
        return findings;
    }

    private static Finding absent(String hash, CaptureUses.Use use, Optional<String> archive) {
        if (archive.isPresent()) {
            return new Finding(
                    hash,
                    State.ARCHIVED,
                    use.firstEntry(),
                    TEXTS.text("capture.archived", use.fileName(), named(use), archive.get()));
        }
        if (!use.own()) {
            return new Finding(
                    hash,
                    State.ELSEWHERE,
                    use.firstEntry(),
                    TEXTS.text("capture.elsewhere", use.fileName(), named(use)));
        }
        return new Finding(
                hash, State.MISSING, use.firstEntry(), TEXTS.text("capture.missing", use.fileName(), named(use), hash));
    }

    private static String named(CaptureUses.Use use) {
        return use.entries() > 1 ? TEXTS.text("capture.ofMany", use.firstEntry(), use.entries() - 1) : use.firstEntry();
    }
}
