// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.nio.file.Path;
import org.ohmstead.curves.ui.internal.PowerCurves.Sort;

/** Something whose curves are laid over those in the chart. */
sealed interface LaidOver {
    /** Returns what it is called. */
    String label();

    /** Returns whether it is what is meant by the other one too, however far that has been read. */
    boolean same(LaidOver other);

    /** The log of another project. */
    sealed interface OtherProject extends LaidOver {
        /** Returns the project's folder. */
        Path folder();

        @Override
        default boolean same(LaidOver other) {
            return other instanceof OtherProject project && project.folder().equals(folder());
        }
    }

    /**
     * A log that is being read.
     *
     * @param folder of the project
     */
    record Awaited(Path folder) implements OtherProject {
        @Override
        public String label() {
            return OtherLog.name(folder) + "\u2026";
        }
    }

    /**
     * A log that has been read.
     *
     * @param folder of the project
     * @param label its name and the year of its last reading
     * @param curves what its valid readings say
     */
    record Known(Path folder, String label, PowerCurves curves) implements OtherProject {
        /** Returns this with another label. */
        Known withLabel(String newLabel) {
            return new Known(folder, newLabel, curves);
        }
    }

    /**
     * Another kind of power of the open project.
     *
     * @param sort which
     */
    record OwnKind(Sort sort) implements LaidOver {
        @Override
        public String label() {
            return sort.text();
        }

        @Override
        public boolean same(LaidOver other) {
            return equals(other);
        }
    }
}
