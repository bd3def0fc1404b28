// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.Platform;
import org.eclipse.help.HelpSystem;
import org.eclipse.help.IToc;
import org.eclipse.help.ITopic;
import org.ohmstead.units.text.Messages;
import org.osgi.framework.Bundle;

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
        URL page = find(href);
        if (page == null) {
            throw new FileNotFoundException(
                    Messages.of(PlatformHelpSource.class).text("page.missing", href));
        }
        return page.openStream();
    }

    /**
     * Finds a page in its module, in the language spoken if the module has it. The help system itself would ask its web application for it,
     * which is not in the product.
     */
    private static URL find(String href) {
        IPath path = IPath.forPosix(href);
        Bundle module = path.segmentCount() < 2 ? null : Platform.getBundle(path.segment(0));
        return module == null
                ? null
                : FileLocator.find(module, IPath.forPosix("$nl$").append(path.removeFirstSegments(1)));
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
