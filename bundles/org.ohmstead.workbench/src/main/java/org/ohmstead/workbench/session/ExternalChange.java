// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.Objects;
import org.ohmstead.model.json.LoadedProject;

/** What became of the project's file since it was last read or saved here. */
public sealed interface ExternalChange {
    /** The file holds what was last read or saved, perhaps with another layout. */
    record Unchanged() implements ExternalChange {}

    /**
     * The file holds something else, and there are no unsaved edits that could be lost by reading it.
     *
     * @param loaded what it holds now
     */
    record ChangedClean(LoadedProject loaded) implements ExternalChange {
        public ChangedClean {
            Objects.requireNonNull(loaded, "loaded");
        }
    }

    /**
     * The file holds something else, and there are unsaved edits: the user chooses by {@link ProjectSession#reloadFromDisk} or {@link
     * ProjectSession#keepMine}.
     *
     * @param loaded what it holds now
     */
    record ChangedWhileDirty(LoadedProject loaded) implements ExternalChange {
        public ChangedWhileDirty {
            Objects.requireNonNull(loaded, "loaded");
        }
    }

    /**
     * The file is gone.
     *
     * @param sentence what to tell the user
     */
    record Vanished(String sentence) implements ExternalChange {
        public Vanished {
            Objects.requireNonNull(sentence, "sentence");
        }
    }

    /**
     * The file holds something that cannot be read.
     *
     * @param sentence what is wrong with it and what to do
     */
    record Unreadable(String sentence) implements ExternalChange {
        public Unreadable {
            Objects.requireNonNull(sentence, "sentence");
        }
    }
}
