// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.List;

/**
 * An entry of the help's contents.
 *
 * @param title what the user sees
 * @param href the page, such as "/org.ohmstead.app/help/plan.html"; empty for a mere heading
 * @param topics the entries below it
 */
public record HelpTopic(String title, String href, List<HelpTopic> topics) {
    public HelpTopic {
        topics = List.copyOf(topics);
    }

    /** Returns an entry without others below it. */
    public static HelpTopic page(String title, String href) {
        return new HelpTopic(title, href, List.of());
    }
}
