// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.testlog.ClockStep;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.units.text.Messages;

/** One check of a whole log, from the first entry to the last, with the chains that were joined to it. */
public final class Verification {
    private static final Messages TEXTS = Messages.of(Verification.class);
    private final Path file;
    private final EntryTable table;
    private final JoinedTable joined;
    private final Optional<String> expectedHead;
    private final Optional<Witness> witness;
    private final List<VerifyFault> faults = new ArrayList<>();
    private final List<JoinNote> joins = new ArrayList<>();
    private final Map<String, ChainWalk> partings = new HashMap<>();
    private final Set<String> partingHashes = new HashSet<>();
    private Optional<ListCheck> lists = Optional.empty();
    private final List<ClockStep> clockSteps = new ArrayList<>();
    private long clockStepCount;
    private long checked;
    private String ownHead = ChainedRow.FIRST_PREVIOUS_HASH;
    private long ownLast;
    private boolean headSeen;
    private boolean witnessChainSeen;
    private boolean witnessSeen;

    /** Prepares a check of an open log, optionally for the hash of an entry that must be there. */
    public Verification(Path file, EntryTable table, JoinedTable joined, Optional<String> expectedHead) {
        this.file = file;
        this.table = table;
        this.joined = joined;
        this.expectedHead = expectedHead;
        this.witness = Witness.beside(file);
        this.headSeen = expectedHead.isEmpty() || expectedHead.get().equals(ChainedRow.FIRST_PREVIOUS_HASH);
    }

    /** Checks everything and says what is wrong. */
    public VerifyReport run() throws TestLogException {
        part("part.structure", () -> {
            lists = knownLists();
            try (FileCheck check = table.fileCheck(file, lists.isEmpty())) {
                runEntries();
                report(check.damages());
            }
            if (lists.isPresent()) {
                checkLists(lists.get());
            }
        });
        checkWitness();
        if (!headSeen) {
            whole(VerifyFault.Kind.HEAD_NOT_FOUND, TEXTS.text("whole.head", expectedHead.orElseThrow()));
        }
        return new VerifyReport(checked, ownHead, faults, clockStepCount, clockSteps);
    }

    private Optional<ListCheck> knownLists() {
        try {
            boolean known = FileCheck.isLarge(file) && joined.chains().isEmpty() && table.hasUsualLists();
            return known ? Optional.of(new ListCheck()) : Optional.empty();
        } catch (SQLException damaged) {
            // The parts that follow meet the same damage and say so.
            return Optional.empty();
        }
    }

    private void runEntries() throws TestLogException {
        part("part.triggers", this::checkGuards);
        part("part.chains", this::findPartings);
        part("part.entries", this::checkOwn);
        part("part.joined", this::checkJoined);
    }

    private interface Part {
        void run() throws SQLException, TestLogException;
    }

    private void part(String unread, Part part) throws TestLogException {
        try {
            part.run();
        } catch (SQLException failure) {
            if (!LogFailures.meansDamage(failure)) {
                throw LogFailures.of(file, LogFailures.VERIFY, failure);
            }
            whole(VerifyFault.Kind.FILE_DAMAGED, TEXTS.text(unread, Long.toString(checked), failure.getMessage()));
        }
    }

    /** The lists of a chain that is whole are gone through; those of another one are left to the database. */
    private void checkLists(ListCheck known) throws SQLException, TestLogException {
        if (faults.isEmpty()) {
            table.listFault(file, known).ifPresent(fault -> report(List.of(fault)));
        } else {
            try (FileCheck check = table.fileCheck(file, true)) {
                report(check.damages());
            }
        }
    }

    private void report(List<String> damages) {
        for (String damage : damages) {
            String sentence = TEXTS.text("whole.damaged", damage);
            if (faults.stream().noneMatch(fault -> fault.sentence().equals(sentence))) {
                whole(VerifyFault.Kind.FILE_DAMAGED, sentence);
            }
        }
    }

    private void checkGuards() throws SQLException {
        Map<String, String> guards = LogSchema.guards(table.schemaVersion());
        Map<String, String> found = table.triggers();
        guards.forEach((name, sql) -> {
            if (!sql.equals(found.get(name))) {
                whole(VerifyFault.Kind.GUARDS_CHANGED, TEXTS.text("whole.trigger", name));
            }
        });
        found.keySet().stream()
                .filter(name -> !guards.containsKey(name))
                .forEach(name -> whole(VerifyFault.Kind.GUARDS_CHANGED, TEXTS.text("whole.foreign", name)));
    }

    /** A chain that parts from another one begins with what is known at that place. */
    private void findPartings() throws SQLException {
        for (JoinedTable.Chain chain : joined.chains()) {
            joined.between(chain.number(), 0, Long.MAX_VALUE, 1).stream()
                    .filter(row -> row.sequence() > 1)
                    .forEach(row -> partingHashes.add(row.previousHash()));
        }
    }

    private void checkOwn() throws SQLException, TestLogException {
        ChainWalk walk = new ChainWalk("", false, faults::add);
        try (HashingReader reader = new HashingReader((row, fits) -> {
            walk.accept(row, fits);
            seeOwn(row);
            see(row, walk);
        })) {
            table.forEachRaw(reader::read);
            reader.finish();
        } finally {
            count(walk);
            ownHead = walk.lastHash();
            ownLast = walk.lastSequence();
        }
    }

    private void count(ChainWalk walk) {
        checked += walk.checked();
        clockStepCount += walk.clock().count();
        walk.clock().told().stream()
                .limit(VerifyReport.MOST_CLOCK_STEPS - clockSteps.size())
                .forEach(clockSteps::add);
    }

    private void seeOwn(RawRow row) {
        lists.ifPresent(known -> known.see(row));
        if (RowShape.kind(row.kind) == EntryKind.JOIN) {
            EntryBodies.joinNote(row.row()).ifPresent(joins::add);
        }
        if (witness.isPresent()) {
            witnessChainSeen |=
                    row.sequence == 1 && row.hashText().equals(witness.get().chain());
            witnessSeen |= row.sequence == witness.get().sequence()
                    && row.hashText().equals(witness.get().hash());
        }
    }

    private void see(RawRow row, ChainWalk walk) {
        if (!headSeen) {
            headSeen = row.hashText().equals(expectedHead.orElseThrow());
        }
        if (!partingHashes.isEmpty() && partingHashes.contains(row.hashText())) {
            partings.putIfAbsent(row.hashText(), walk.parting("", false, faults::add));
        }
    }

    private void checkJoined() throws SQLException, TestLogException {
        List<JoinedTable.Chain> chains = joined.chains();
        for (JoinedTable.Chain chain : chains) {
            checkJoined(chain);
        }
        for (JoinNote note : joins) {
            boolean there =
                    chains.stream().anyMatch(chain -> chain.info().chain().equals(note.chain()));
            if (!there) {
                broken(note.label(), note.afterSequence() + 1, TEXTS.text("joined.missing"));
            }
        }
    }

    private void checkJoined(JoinedTable.Chain chain) throws SQLException, TestLogException {
        String label = chain.info().label();
        List<JoinNote> notes = joins.stream()
                .filter(note -> note.chain().equals(chain.info().chain()))
                .toList();
        JoinCheck check = new JoinCheck(chain.info(), notes, (sequence, what) -> broken(label, sequence, what));
        ChainWalk walk = start(chain, check);
        try (HashingReader reader = new HashingReader((row, fits) -> {
            walk.accept(row, fits);
            check.see(row);
            see(row, walk);
        })) {
            joined.forEachRaw(chain.number(), reader::read);
            reader.finish();
        } finally {
            count(walk);
        }
        check.finish();
    }

    private ChainWalk start(JoinedTable.Chain chain, JoinCheck check) throws SQLException {
        Optional<ChainedRow> first =
                joined.between(chain.number(), 0, Long.MAX_VALUE, 1).stream().findFirst();
        if (first.isPresent() && first.get().sequence() > 1) {
            ChainWalk parting = partings.get(first.get().previousHash());
            if (parting != null) {
                return parting.parting(chain.info().label(), false, faults::add);
            }
            check.partsFromNothing();
        }
        return new ChainWalk(chain.info().label(), false, faults::add);
    }

    private void broken(String label, long sequence, String what) {
        String sentence = TEXTS.text("joined", label, what);
        faults.add(new VerifyFault(VerifyFault.Kind.JOIN_BROKEN, sequence, "", sentence));
    }

    private void checkWitness() {
        boolean empty = ownLast == 0;
        if (witness.isEmpty() || witnessSeen || !(witnessChainSeen || empty)) {
            return;
        }
        long first = Math.min(ownLast + 1, witness.get().sequence());
        faults.add(new VerifyFault(
                VerifyFault.Kind.CUT_OFF,
                first,
                "",
                TEXTS.text(
                        "whole.cut",
                        Witness.INDEX_NAME,
                        Long.toString(witness.get().sequence()),
                        witness.get().hash(),
                        Long.toString(ownLast))));
    }

    private void whole(VerifyFault.Kind kind, String sentence) {
        faults.add(new VerifyFault(kind, 0, "", sentence));
    }
}
