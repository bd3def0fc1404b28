// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** What comes of reading a signal's settings. */
public sealed interface SignalDraft {
    /**
     * A signal.
     *
     * @param signal what the settings describe
     */
    record Made(TestSignal signal) implements SignalDraft {}

    /**
     * The settings describe no signal.
     *
     * @param settingId the one that is to blame; empty text when it is none alone
     * @param sentence why, in the language spoken now
     */
    record Refused(String settingId, String sentence) implements SignalDraft {}
}
