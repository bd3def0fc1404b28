// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The line above the pages: which page is looked at, and how large. */
final class PageBar {
    private final Label page;
    private final ToolItem percent;
    private final ToolItem fitWidth;
    private final ToolItem fitPage;
    private PageColumn column;

    PageBar(Composite parent) {
        Composite bar = new Composite(parent, SWT.NONE);
        Spacing.group(2).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        page = Ids.name(new Label(bar, SWT.NONE), "sheet.page");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(page);
        ToolBar tools = new ToolBar(bar, SWT.FLAT | SWT.RIGHT);
        item(tools, SWT.PUSH, "\u2212", "sheet.zoom.out", Texts.say("pages.out.hint"), () -> column.zoomOut());
        percent = item(
                tools,
                SWT.PUSH,
                "100 %",
                "sheet.zoom.actual",
                Texts.say("pages.actual.hint"),
                () -> column.zoom(new Zoom.Fixed(1)));
        item(tools, SWT.PUSH, "+", "sheet.zoom.in", Texts.say("pages.in.hint"), () -> column.zoomIn());
        new ToolItem(tools, SWT.SEPARATOR);
        fitWidth = item(
                tools,
                SWT.CHECK,
                Texts.say("pages.width"),
                "sheet.zoom.width",
                Texts.say("pages.width.hint"),
                () -> column.zoom(new Zoom.FitWidth()));
        new ToolItem(tools, SWT.SEPARATOR);
        fitPage = item(
                tools,
                SWT.CHECK,
                Texts.say("pages.page"),
                "sheet.zoom.page",
                Texts.say("pages.page.hint"),
                () -> column.zoom(new Zoom.FitPage()));
    }

    private static ToolItem item(ToolBar bar, int style, String words, String id, String hint, Runnable action) {
        ToolItem item = Ids.name(new ToolItem(bar, style), id);
        item.setText(words);
        item.setToolTipText(hint);
        item.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> action.run()));
        return item;
    }

    /** Says which pages the buttons act on. */
    void connect(PageColumn newColumn) {
        column = newColumn;
    }

    /** Shows what the pages are at. */
    void update() {
        if (column == null) {
            return;
        }
        String failure = column.failure();
        Tones tones = Tones.of(page);
        page.setForeground(failure.isEmpty() ? tones.mutedText() : tones.error());
        page.setText(
                failure.isEmpty()
                        ? Texts.say("pages.at", column.currentPage() + 1 + "", column.pageCount() + "")
                        : failure.replace("&", "&&"));
        percent.setText(Math.round(100 * column.factor()) + " %");
        fitWidth.setSelection(column.zoom() instanceof Zoom.FitWidth);
        fitPage.setSelection(column.zoom() instanceof Zoom.FitPage);
        percent.getParent().requestLayout();
    }
}
