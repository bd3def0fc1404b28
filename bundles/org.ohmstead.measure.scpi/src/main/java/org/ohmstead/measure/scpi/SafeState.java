// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/**
 * Switches instruments off from any thread. The commands go out at once on the links that are there, between the lines of whoever uses
 * them. Then each instrument is asked to confirm: on its link if nobody waits there, else on a short-lived one of its own, on which the
 * commands are sent once more, since on the other they may stand behind something slow.
 */
final class SafeState {
    private static final Messages TEXTS = Messages.of(SafeState.class);
    private static final Duration PATIENCE = Duration.ofMillis(1500);

    private SafeState() {}

    /**
     * Something to be switched off.
     *
     * @param key with what the names of the texts about it begin
     * @param connection its usual link
     * @param commands without answers
     */
    record Target(String key, ScpiConnection connection, List<String> commands) {
        Target {
            commands = List.copyOf(commands);
        }
    }

    /** Switches all of them off. Returns a sentence for each that did not confirm it. An interrupt does not stop it, and is kept. */
    static List<Said> switchOff(List<Target> targets, ScpiOptions options) {
        boolean interrupted = Thread.interrupted();
        List<Said> failures = new ArrayList<>();
        List<Boolean> told = new ArrayList<>();
        for (Target target : targets) {
            boolean sent = false;
            try {
                sent = target.connection().interject(target.commands());
            } catch (InterruptedException again) {
                interrupted = true;
            }
            told.add(sent);
        }
        for (int i = 0; i < targets.size(); i++) {
            // Asked anew after an interrupt: it was kept and must not leave the next one on.
            for (boolean done = false; !done; ) {
                try {
                    confirm(targets.get(i), told.get(i), options).ifPresent(failures::add);
                    done = true;
                } catch (InterruptedException again) {
                    interrupted = true;
                }
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        return failures;
    }

    private static Optional<Said> confirm(Target target, boolean told, ScpiOptions options)
            throws InterruptedException {
        if (target.connection().finishesNow(target.commands(), PATIENCE)) {
            return Optional.empty();
        }
        try (ScpiConnection own =
                ScpiConnection.open(target.connection().address(), options.withWaits(PATIENCE, PATIENCE))) {
            for (String command : target.commands()) {
                own.command(command);
            }
            own.finish(PATIENCE);
            return Optional.empty();
        } catch (MeasurementException failed) {
            return Optional.of(Said.of(TEXTS, target.key() + (told ? ".unconfirmed" : ".untold"), Said.by(failed)));
        }
    }
}
