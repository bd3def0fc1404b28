// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

/** What the console asks of the workbench around it. */
interface ConsoleHost {
    /** Opens a page of the project, such as {@code $.plan}. */
    void open(String where);

    /** Starts a command of the workbench. */
    void command(String id);

    /** Brings the console to the front, because something is asked there. */
    void show();

    /** A host that does nothing. */
    ConsoleHost NONE = new ConsoleHost() {
        @Override
        public void open(String where) {
            // There is no workbench.
        }

        @Override
        public void command(String id) {
            // There is no workbench.
        }

        @Override
        public void show() {
            // There is no workbench.
        }
    };
}
