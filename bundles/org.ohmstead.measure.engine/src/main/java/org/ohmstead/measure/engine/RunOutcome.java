// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Said;

/** How a run ended. In each case but that of a bench that did not obey, which a remark says, nothing is fed any more. */
public sealed interface RunOutcome {
    /** Returns how it ended, in whole sentences that the log keeps in English. */
    Said said();

    /** Returns what else is to be known, whole sentences that the log keeps in English. */
    List<Said> further();

    /** Returns this with further remarks. */
    RunOutcome with(List<Said> more);

    /** Returns how it ended, in whole sentences for the technician. */
    default String sentence() {
        return said().shown();
    }

    /** Returns what else is to be known, whole sentences: threads left behind, a bench that could not be closed. */
    default List<String> remarks() {
        return further().stream().map(Said::shown).toList();
    }

    /** It gave a result. */
    record Finished(RunRecord record, List<Said> further) implements RunOutcome {
        public Finished {
            further = List.copyOf(further);
        }

        @Override
        public Said said() {
            return Sentences.of(
                    "finished",
                    record.measurement().name(),
                    record.subject().step().id());
        }

        @Override
        public Finished with(List<Said> more) {
            return new Finished(record, joined(further, more));
        }
    }

    /** Somebody cancelled it. */
    record Cancelled(Said said, List<Said> further) implements RunOutcome {
        public Cancelled {
            further = List.copyOf(further);
        }

        @Override
        public Cancelled with(List<Said> more) {
            return new Cancelled(said, joined(further, more));
        }
    }

    /** Somebody pressed the emergency stop; nothing runs until it is released. */
    record EmergencyStopped(Said said, List<Said> further) implements RunOutcome {
        public EmergencyStopped {
            further = List.copyOf(further);
        }

        @Override
        public EmergencyStopped with(List<Said> more) {
            return new EmergencyStopped(said, joined(further, more));
        }
    }

    /**
     * A stop limit was passed.
     *
     * @param limit which
     * @param observed what was found, in the limit's unit
     */
    record Stopped(StopLimit limit, double observed, Said said, List<Said> further) implements RunOutcome {
        public Stopped {
            further = List.copyOf(further);
        }

        @Override
        public Stopped with(List<Said> more) {
            return new Stopped(limit, observed, said, joined(further, more));
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
    record Failed(PluginKind kind, String pluginId, boolean fault, Said said, List<Said> further)
            implements RunOutcome {
        public Failed {
            further = List.copyOf(further);
        }

        @Override
        public Failed with(List<Said> more) {
            return new Failed(kind, pluginId, fault, said, joined(further, more));
        }
    }

    /** It did not begin, and nothing was fed; the sentence says what is in the way and what to do. */
    record Refused(Said said, List<Said> further) implements RunOutcome {
        public Refused {
            further = List.copyOf(further);
        }

        @Override
        public Refused with(List<Said> more) {
            return new Refused(said, joined(further, more));
        }
    }

    /** What was recorded or found could not be kept, because the disk or the log failed. */
    record NotKept(Said said, List<Said> further) implements RunOutcome {
        public NotKept {
            further = List.copyOf(further);
        }

        @Override
        public NotKept with(List<Said> more) {
            return new NotKept(said, joined(further, more));
        }
    }

    private static List<Said> joined(List<Said> some, List<Said> more) {
        List<Said> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }
}
