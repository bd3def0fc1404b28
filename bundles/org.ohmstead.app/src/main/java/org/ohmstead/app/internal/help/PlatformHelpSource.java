// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.help.HelpSystem;
import org.eclipse.help.IToc;
import org.eclipse.help.ITopic;

/** The help that all installed modules bring, as the platform's help system puts it together. */
final class PlatformHelpSource implements HelpSource {
    @Override
    public List<HelpTopic> contents() {
        List<HelpTopic> books = new ArrayList<>();
        for (IToc toc : HelpSystem.getTocs()) {
            books.add(new HelpTopic(toc.getLabel(), "", topics(toc.getTopics())));
        }
        return books.size() == 1 ? books.get(0).topics() : books;
    }

    @Override
    public InputStream open(String href) throws IOException {
        InputStream content = HelpSystem.getHelpContent(href);
        if (content == null) {
            throw new FileNotFoundException("No module brings the help page " + href + ".");
        }
        return content;
    }

    private static List<HelpTopic> topics(ITopic[] topics) {
        List<HelpTopic> result = new ArrayList<>();
        for (ITopic topic : topics) {
            String href = topic.getHref() == null ? "" : topic.getHref();
            result.add(new HelpTopic(topic.getLabel(), href, topics(topic.getSubtopics())));
        }
        return result;
    }
}
