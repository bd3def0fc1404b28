// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import org.ohmstead.model.Project;

/** What a session tells the desk that holds it. */
interface SessionObserver {
    /** An observer that hears nothing. */
    SessionObserver NONE = new SessionObserver() {
        @Override
        public void changed(Project before, Project after) {
            // A session without a desk has nobody to tell.
        }

        @Override
        public void stateChanged() {
            // A session without a desk has nobody to tell.
        }
    };

    /** The project is another one now; the state may have changed with it. */
    void changed(Project before, Project after);

    /** Dirty, undo, redo, saved or read-only state may have changed, the project did not. */
    void stateChanged();
}
