// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** Whether a measurement can be made of a subject. */
public sealed interface Readiness {
    /** It can. */
    record Ready() implements Readiness {}

    /**
     * It could, if something were otherwise.
     *
     * @param reason what is in the way, a whole sentence
     * @param remedy what to do, a whole sentence
     */
    record NotYet(String reason, String remedy) implements Readiness {
        public NotYet {
            Checks.named(reason, "reason");
            Checks.named(remedy, "remedy");
        }
    }

    /**
     * It makes no sense for this subject.
     *
     * @param reason why, a whole sentence
     */
    record NotApplicable(String reason) implements Readiness {
        public NotApplicable {
            Checks.named(reason, "reason");
        }
    }
}
