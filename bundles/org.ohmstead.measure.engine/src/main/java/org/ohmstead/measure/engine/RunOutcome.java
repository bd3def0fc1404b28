// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Messages;

/** How a run ended. In each case but that of a bench that did not obey, which a remark says, nothing is fed any more. */
public sealed interface RunOutcome {
    /** Returns how it ended, in whole sentences for the technician. */
    String sentence();

    /** Returns what else is to be known, whole sentences: threads left behind, a bench that could not be closed. */
    List<String> remarks();

    /** Returns this with further remarks. */
    RunOutcome with(List<String> more);

    /** It gave a result. */
    record Finished(RunRecord record, List<String> remarks) implements RunOutcome {
        private static final Messages TEXTS = Messages.of(Finished.class);

        public Finished {
            remarks = List.copyOf(remarks);
        }

        @Override
        public String sentence() {
            return TEXTS.text(
                    "finished",
                    record.measurement().name(),
                    record.subject().step().id());
        }

        @Override
        public Finished with(List<String> more) {
            return new Finished(record, joined(remarks, more));
        }
    }

    /** Somebody cancelled it. */
    record Cancelled(String sentence, List<String> remarks) implements RunOutcome {
        public Cancelled {
            remarks = List.copyOf(remarks);
        }

        @Override
        public Cancelled with(List<String> more) {
            return new Cancelled(sentence, joined(remarks, more));
        }
    }

    /** Somebody pressed the emergency stop; nothing runs until it is released. */
    record EmergencyStopped(String sentence, List<String> remarks) implements RunOutcome {
        public EmergencyStopped {
            remarks = List.copyOf(remarks);
        }

        @Override
        public EmergencyStopped with(List<String> more) {
            return new EmergencyStopped(sentence, joined(remarks, more));
        }
    }

    /**
     * A stop limit was passed.
     *
     * @param limit which
     * @param observed what was found, in the limit's unit
     */
    record Stopped(StopLimit limit, double observed, String sentence, List<String> remarks) implements RunOutcome {
        public Stopped {
            remarks = List.copyOf(remarks);
        }

        @Override
        public Stopped with(List<String> more) {
            return new Stopped(limit, observed, sentence, joined(remarks, more));
        }
    }

    /**
     * A plug-in failed.
     *
     * @param kind what it is
     * @param pluginId which
     * @param fault whether it is at fault itself: it threw, hung or answered nonsense; a bench that says in an orderly way that an
     *     instrument does not answer is not
     */
    record Failed(PluginKind kind, String pluginId, boolean fault, String sentence, List<String> remarks)
            implements RunOutcome {
        public Failed {
            remarks = List.copyOf(remarks);
        }

        @Override
        public Failed with(List<String> more) {
            return new Failed(kind, pluginId, fault, sentence, joined(remarks, more));
        }
    }

    /** It did not begin, and nothing was fed; the sentence says what is in the way and what to do. */
    record Refused(String sentence, List<String> remarks) implements RunOutcome {
        public Refused {
            remarks = List.copyOf(remarks);
        }

        @Override
        public Refused with(List<String> more) {
            return new Refused(sentence, joined(remarks, more));
        }
    }

    /** What was recorded or found could not be kept, because the disk or the log failed. */
    record NotKept(String sentence, List<String> remarks) implements RunOutcome {
        public NotKept {
            remarks = List.copyOf(remarks);
        }

        @Override
        public NotKept with(List<String> more) {
            return new NotKept(sentence, joined(remarks, more));
        }
    }

    private static List<String> joined(List<String> some, List<String> more) {
        List<String> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }
}
