// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.List;
import java.util.stream.Stream;

/**
 * A page of the help.
 *
 * @param href its address
 * @param title its title
 * @param blocks what it is made of
 */
record HelpPage(String href, String title, List<HelpBlock> blocks) {
    HelpPage {
        blocks = List.copyOf(blocks);
    }

    /** Returns all addresses that the page leads to, in the order of the page. */
    List<String> links() {
        return blocks.stream()
                .flatMap(HelpPage::spans)
                .map(HelpSpan::href)
                .filter(href -> !href.isEmpty())
                .toList();
    }

    private static Stream<HelpSpan> spans(HelpBlock block) {
        if (block instanceof HelpBlock.Table table) {
            return table.rows().stream().flatMap(row -> row.cells().stream()).flatMap(List::stream);
        }
        return ((HelpBlock.Text) block).spans().stream();
    }
}
