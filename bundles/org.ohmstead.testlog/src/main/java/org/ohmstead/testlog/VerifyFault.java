// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Objects;

/**
 * Something in the log that is not as it was written.
 *
 * @param kind what sort of fault
 * @param sequence the entry's place in the log, or 0 when the log as a whole is at fault
 * @param entryId the entry's id as stored, with its chain's label before it when it was joined, such as B/R0001; empty when the log as a whole is at fault
 * @param sentence what is wrong, in whole sentences
 */
public record VerifyFault(Kind kind, long sequence, String entryId, String sentence) {
    /** The sorts of faults. */
    public enum Kind {
        /** An entry's content does not give its hash. */
        CONTENT_CHANGED,
        /** An entry does not continue the one before it. */
        CHAIN_BROKEN,
        /** Sequence numbers are left out. */
        ENTRY_MISSING,
        /** An entry's kind, id, time or content cannot be understood. */
        UNREADABLE,
        /** A void takes back an entry that is not there, is a void itself or was taken back already. */
        VOID_WITHOUT_TARGET,
        /** The triggers that refuse changes are not as they were made. */
        GUARDS_CHANGED,
        /** The expected head is not in the log. */
        HEAD_NOT_FOUND,
        /** The file itself is damaged. */
        FILE_DAMAGED,
        /** The log ends before the place that the index beside it has seen, or is another one from there on. */
        CUT_OFF,
        /** A joined chain is not as the join entries say. */
        JOIN_BROKEN
    }

    public VerifyFault {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(entryId, "entryId");
        Objects.requireNonNull(sentence, "sentence");
    }
}
