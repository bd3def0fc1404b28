// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/** Where the help comes from: the platform's help system in the workbench, plain files in a test. */
public interface HelpSource {
    /** Returns the contents. */
    List<HelpTopic> contents();

    /**
     * Opens a page; the caller closes it.
     *
     * @param href the page, such as "/org.ohmstead.app/help/plan.html"
     * @throws IOException when there is no such page or it cannot be read
     */
    InputStream open(String href) throws IOException;
}
