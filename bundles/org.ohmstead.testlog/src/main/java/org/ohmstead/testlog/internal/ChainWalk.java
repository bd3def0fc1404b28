// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.units.text.Messages;

/**
 * Checks the rows of one chain in their order. What a hash vouches for was written by the log, which writes nothing that cannot be read;
 * so the content of a row is looked through only where it says something about other rows, where its hash is wrong, or where the chain
 * comes from outside.
 */
public final class ChainWalk {
    private static final Messages TEXTS = Messages.of(ChainWalk.class);
    private final String label;
    private final boolean fromOutside;
    private final Consumer<VerifyFault> faults;
    private final KnownIds ids;
    private final Set<String> voided;
    private final ClockSteps clock;
    private long checked;
    private long lastSequence;
    private byte[] lastHash;

    /**
     * Begins a chain.
     *
     * @param label label of a joined chain; empty for a log's own
     * @param fromOutside whether all contents are to be looked through
     * @param faults takes what is wrong
     */
    public ChainWalk(String label, boolean fromOutside, Consumer<VerifyFault> faults) {
        this.label = label;
        this.fromOutside = fromOutside;
        this.faults = faults;
        this.ids = new KnownIds();
        this.voided = new HashSet<>();
        this.clock = new ClockSteps(label);
        this.lastHash = ChainedRow.FIRST_PREVIOUS_HASH.getBytes(StandardCharsets.US_ASCII);
    }

    private ChainWalk(ChainWalk start, String label, boolean fromOutside, Consumer<VerifyFault> faults) {
        this.label = label;
        this.fromOutside = fromOutside;
        this.faults = faults;
        this.ids = new KnownIds(start.ids);
        this.voided = new HashSet<>(start.voided);
        this.clock = start.clock.parting(label);
        this.lastSequence = start.lastSequence;
        this.lastHash = start.lastHash;
    }

    /** Returns a check of a chain that parts from this one behind the last row that was checked. */
    public ChainWalk parting(String newLabel, boolean newFromOutside, Consumer<VerifyFault> newFaults) {
        return new ChainWalk(this, newLabel, newFromOutside, newFaults);
    }

    /** Checks the next row, of which it is known whether its content gives its hash. */
    public void accept(RawRow row, boolean hashFits) {
        checked++;
        checkPlace(row);
        if (!hashFits) {
            fault(VerifyFault.Kind.CONTENT_CHANGED, row, TEXTS.text("fault.changed"));
        }
        checkContent(row, hashFits);
        clock.see(row);
        lastSequence = row.sequence;
        lastHash = row.hash;
    }

    /** Returns where the times of the rows so far run backwards. */
    public ClockSteps clock() {
        return clock;
    }

    /** Returns how many rows were checked. */
    public long checked() {
        return checked;
    }

    /** Returns the number of the last row, of the one that the chain parted behind, or 0. */
    public long lastSequence() {
        return lastSequence;
    }

    /** Returns the hash of that row, or zeros. */
    public String lastHash() {
        return RawRow.text(lastHash);
    }

    private void checkPlace(RawRow row) {
        if (row.sequence != lastSequence + 1) {
            fault(VerifyFault.Kind.ENTRY_MISSING, row, TEXTS.text("fault.removed", Long.toString(lastSequence)));
        }
        if (!Arrays.equals(row.previousHash, lastHash)) {
            fault(VerifyFault.Kind.CHAIN_BROKEN, row, TEXTS.text("fault.broken", Long.toString(lastSequence)));
        }
    }

    private void checkContent(RawRow row, boolean hashFits) {
        EntryKind kind = RowShape.kind(row.kind);
        if (kind == null) {
            fault(VerifyFault.Kind.UNREADABLE, row, TEXTS.text("fault.kind", RawRow.text(row.kind)));
            return;
        }
        long number = KnownIds.number(row.entryId, kind);
        if (number < 0) {
            fault(VerifyFault.Kind.UNREADABLE, row, TEXTS.text("fault.idOfKind"));
        } else if (!ids.add(row.entryId, kind, number)) {
            fault(VerifyFault.Kind.UNREADABLE, row, TEXTS.text("fault.idTwice"));
        }
        if (!RowShape.isTime(row.recordedAt)) {
            fault(VerifyFault.Kind.UNREADABLE, row, TEXTS.text("fault.time", RawRow.text(row.recordedAt)));
        }
        checkBody(row, kind, hashFits && !fromOutside);
    }

    private void checkBody(RawRow row, EntryKind kind, boolean ours) {
        String target = ours && kind == EntryKind.VOID ? RowShape.voidTarget(row.body) : null;
        if (target != null) {
            checkTarget(row, target);
        } else if (!ours || saysSomethingAboutOthers(kind) || !isObject(row.body)) {
            EntryBodies.Said said = EntryBodies.said(row.row(), kind);
            said.fault().ifPresent(why -> fault(VerifyFault.Kind.UNREADABLE, row, TEXTS.text("fault.unread", why)));
            said.target().ifPresent(id -> checkTarget(row, id));
        }
    }

    private static boolean saysSomethingAboutOthers(EntryKind kind) {
        return kind == EntryKind.VOID || kind == EntryKind.JOIN || kind == EntryKind.ARCHIVE;
    }

    private static boolean isObject(byte[] body) {
        return body.length > 1 && body[0] == '{' && body[body.length - 1] == '}';
    }

    private void checkTarget(RawRow row, String target) {
        byte[] id = target.getBytes(StandardCharsets.UTF_8);
        boolean isVoid = id.length > 0 && id[0] == EntryKind.VOID.idPrefix();
        boolean itself = Arrays.equals(id, row.entryId);
        if (!ids.has(id) || itself) {
            fault(VerifyFault.Kind.VOID_WITHOUT_TARGET, row, TEXTS.text("fault.voidsNothing", target));
        } else if (isVoid) {
            fault(VerifyFault.Kind.VOID_WITHOUT_TARGET, row, TEXTS.text("fault.voidsVoid", target));
        } else if (!voided.add(target)) {
            fault(VerifyFault.Kind.VOID_WITHOUT_TARGET, row, TEXTS.text("fault.voidsTwice", target));
        }
    }

    private void fault(VerifyFault.Kind kind, RawRow row, String predicate) {
        String id = EntryBodies.idWithin(label, RawRow.text(row.entryId));
        String number = Long.toString(row.sequence);
        faults.accept(new VerifyFault(
                kind,
                row.sequence,
                id,
                TEXTS.text(label.isEmpty() ? "fault.own" : "fault.joined", id, number, predicate, label)));
    }
}
