// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The projects that were open before: a name to click, and the folder that it lies in. Those that are gone turn grey. */
final class RecentProjects extends Composite {
    private static final Messages TEXTS = Messages.of(RecentProjects.class);
    private static final int MOST = 6;
    private static final String ENDING = ".ohmstead";

    private final WelcomeActions actions;
    private final List<Label> folders = new ArrayList<>();

    RecentProjects(Composite parent, WelcomeActions actions) {
        super(parent, SWT.NONE);
        this.actions = actions;
        Spacing.group(2).spacing(2 * Spacing.MARGIN, Spacing.TIGHT).applyTo(this);
        fill();
    }

    /** Lists the projects anew. */
    void fill() {
        for (Control child : getChildren()) {
            child.dispose();
        }
        folders.clear();
        List<Path> recent = actions.recent().stream().limit(MOST).toList();
        if (recent.isEmpty()) {
            Label none = Ids.name(new Label(this, SWT.WRAP), "welcome.recent.none");
            none.setText(TEXTS.text("recent.none"));
            GridDataFactory.fillDefaults()
                    .span(2, 1)
                    .grab(true, false)
                    .hint(1, SWT.DEFAULT)
                    .applyTo(none);
            folders.add(none);
        }
        List<Link> links = new ArrayList<>();
        for (Path folder : recent) {
            links.add(row(folder, links.size()));
        }
        tone();
        markVanished(recent, links);
    }

    /** Takes the colours of the theme. */
    void tone() {
        Tones tones = Tones.of(this);
        folders.forEach(label -> label.setForeground(tones.mutedText()));
    }

    private Link row(Path folder, int index) {
        Link link = Ids.name(new Link(this, SWT.NONE), "welcome.recent." + index);
        // A link reads angle brackets as marks and ampersands as mnemonics.
        link.setText("<a>" + name(folder).replace("&", "&&").replace("<", "‹") + "</a>");
        link.addListener(SWT.Selection, event -> actions.openRecent(folder));
        Label where = Ids.name(new Label(this, SWT.NONE), "welcome.recent." + index + ".folder");
        where.setText(shortened(folder.getParent()).replace("&", "&&"));
        where.setToolTipText(folder.toString());
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(where);
        folders.add(where);
        return link;
    }

    /** A folder may lie on a drive that answers slowly: it is looked for on another thread. */
    private void markVanished(List<Path> recent, List<Link> links) {
        Display display = getDisplay();
        for (int i = 0; i < recent.size(); i++) {
            Path folder = recent.get(i);
            Link link = links.get(i);
            Label where = folders.get(i);
            CompletableFuture.supplyAsync(() -> Files.isDirectory(folder)).thenAccept(there -> {
                if (!there && !display.isDisposed()) {
                    display.asyncExec(() -> grey(link, where, folder));
                }
            });
        }
    }

    private static void grey(Link link, Label where, Path folder) {
        if (!link.isDisposed()) {
            link.setEnabled(false);
            where.setText(
                    TEXTS.text("recent.vanished", shortened(folder.getParent())).replace("&", "&&"));
            link.getParent().layout();
        }
    }

    private static String name(Path folder) {
        String name = String.valueOf(folder.getFileName());
        return name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
    }

    private static String shortened(Path folder) {
        if (folder == null) {
            return "";
        }
        Path home = Path.of(System.getProperty("user.home", ""));
        boolean inside = folder.startsWith(home) && !home.toString().isEmpty();
        return inside ? "~/" + home.relativize(folder) : folder.toString();
    }
}
