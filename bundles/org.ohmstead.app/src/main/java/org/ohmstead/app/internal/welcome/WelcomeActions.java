// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import java.nio.file.Path;
import java.util.List;

/** What the welcome page can set going. All is called on the user interface's thread. */
public interface WelcomeActions {
    /** Opens a copy of the demo project. */
    void openDemo();

    /** Asks for a project's folder and opens it. */
    void openProject();

    /** Begins a new project. */
    void newProject();

    /** Opens a project that was open before. */
    void openRecent(Path folder);

    /** Shows the first page of the help. */
    void showHelp();

    /** Returns the folders of the projects that were open before, the last one first; some may be gone. */
    List<Path> recent();
}
