// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ScrollBar;
import org.ohmstead.report.PageSize;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.BackgroundWork;

/** The pages of the sheet in a column that scrolls, at any size. */
final class PageColumn {
    private static final int LINE = 40;
    private static final int SHADOW = 3;
    private static final int SHADOW_ALPHA = 28;

    private final Canvas canvas;
    private final PagePictures pictures;
    private final Runnable changed;
    private SheetMaker.Pages pages;
    private PageStack stack = PageStack.of(List.of(), new Zoom.FitWidth(), 1, 1);
    private Zoom zoom = new Zoom.FitWidth();
    private int top;
    private int left;

    /**
     * Makes it empty.
     *
     * @param parent where it stands
     * @param work what draws pages
     * @param changed runs when the page looked at, the zoom or the images changed
     */
    PageColumn(Composite parent, BackgroundWork work, Runnable changed) {
        this.changed = changed;
        canvas = Ids.name(
                new Canvas(parent, SWT.V_SCROLL | SWT.H_SCROLL | SWT.DOUBLE_BUFFERED | SWT.NO_REDRAW_RESIZE),
                "sheet.pages");
        pictures = new PagePictures(canvas, work, this::imagesChanged);
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> layOut());
        canvas.addListener(SWT.KeyDown, this::key);
        canvas.addListener(SWT.FocusIn, event -> canvas.redraw());
        canvas.addListener(SWT.FocusOut, event -> canvas.redraw());
        canvas.addListener(SWT.MouseDown, event -> canvas.setFocus());
        canvas.addListener(
                SWT.Traverse,
                event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT
                        || event.detail == SWT.TRAVERSE_TAB_PREVIOUS
                        || event.detail == SWT.TRAVERSE_MNEMONIC);
        canvas.addListener(SWT.MouseWheel, this::wheel);
        canvas.getVerticalBar()
                .addListener(
                        SWT.Selection,
                        event -> scrollTo(left, canvas.getVerticalBar().getSelection()));
        canvas.getHorizontalBar()
                .addListener(
                        SWT.Selection,
                        event -> scrollTo(canvas.getHorizontalBar().getSelection(), top));
        canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = pages == null
                        ? Texts.say("pages.name")
                        : Texts.say("pages.nameAt", currentPage() + 1 + "", pageCount() + "");
            }

            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = pages == null ? "" : pages.words().get(currentPage());
            }
        });
    }

    Canvas control() {
        return canvas;
    }

    /** Shows other pages; the place that is looked at stays as far as there is such a page. */
    void show(Optional<SheetMaker.Pages> newPages) {
        pages = newPages.orElse(null);
        pictures.show(newPages);
        layOut();
    }

    int pageCount() {
        return stack.count();
    }

    /** Returns the page that is looked at, from 0. */
    int currentPage() {
        return stack.pageAt(top, viewHeight());
    }

    Zoom zoom() {
        return zoom;
    }

    /** Returns the factor that pages are shown at; 1 is the size on paper. */
    double factor() {
        return stack.factor();
    }

    /** Returns whether all that is seen is drawn as sharp as it can be. */
    boolean complete() {
        return pictures.complete();
    }

    /** Returns why pages cannot be drawn; empty when they can. */
    String failure() {
        return pictures.failure();
    }

    /** Shows pages larger or smaller; the place in the middle of the view stays. */
    void zoom(Zoom newZoom) {
        zoom = newZoom;
        pictures.retry();
        layOut();
    }

    void zoomIn() {
        zoom(Zoom.Fixed.above(stack.factor()));
    }

    void zoomOut() {
        zoom(Zoom.Fixed.below(stack.factor()));
    }

    /** Scrolls to the top of a page; out of range to the first or last. */
    void goTo(int page) {
        if (pageCount() > 0) {
            int within = Math.max(0, Math.min(pageCount() - 1, page));
            scrollTo(left, stack.place(within).y - PageStack.GAP);
        }
    }

    private int viewWidth() {
        return Math.max(1, canvas.getClientArea().width);
    }

    private int viewHeight() {
        return Math.max(1, canvas.getClientArea().height);
    }

    private void layOut() {
        double place = stack.height() <= 0 ? 0 : (top + viewHeight() / 2.0) / stack.height();
        boolean atTop = top == 0;
        List<PageSize> sizes = pages == null ? List.of() : pages.sizes();
        stack = PageStack.of(sizes, zoom, viewWidth(), viewHeight());
        setBar(canvas.getVerticalBar(), stack.height(), viewHeight());
        setBar(canvas.getHorizontalBar(), stack.width(), viewWidth());
        canvas.getHorizontalBar().setVisible(stack.width() > viewWidth());
        scrollTo(
                (stack.width() - viewWidth()) / 2,
                atTop ? 0 : (int) Math.round(place * stack.height() - viewHeight() / 2.0));
        canvas.redraw();
    }

    private static void setBar(ScrollBar bar, int whole, int seen) {
        bar.setValues(bar.getSelection(), 0, Math.max(whole, seen), Math.max(1, Math.min(whole, seen)), LINE, seen);
        bar.setEnabled(whole > seen);
    }

    private void scrollTo(int newLeft, int newTop) {
        left = Math.max(0, Math.min(stack.width() - viewWidth(), newLeft));
        top = Math.max(0, Math.min(stack.height() - viewHeight(), newTop));
        canvas.getVerticalBar().setSelection(top);
        canvas.getHorizontalBar().setSelection(left);
        if (pages != null) {
            pictures.want(byUrgency(), stack.scale());
        }
        canvas.redraw();
        changed.run();
    }

    private List<Integer> byUrgency() {
        List<Integer> near = new ArrayList<>(stack.near(top, viewHeight()));
        int current = currentPage();
        near.sort((one, other) -> Integer.compare(Math.abs(one - current), Math.abs(other - current)));
        return near;
    }

    private void imagesChanged() {
        canvas.redraw();
        changed.run();
    }

    private void paint(GC gc) {
        Tones tones = Tones.of(canvas);
        for (int page : stack.near(top, viewHeight())) {
            Rectangle place = stack.place(page);
            place.x -= left;
            place.y -= top;
            gc.setAlpha(SHADOW_ALPHA);
            gc.setBackground(canvas.getDisplay().getSystemColor(SWT.COLOR_BLACK));
            for (int spread = 1; spread <= SHADOW; spread++) {
                gc.fillRectangle(place.x + spread, place.y + spread, place.width + 1, place.height + 1);
            }
            gc.setAlpha(255);
            gc.setBackground(canvas.getDisplay().getSystemColor(SWT.COLOR_WHITE));
            gc.fillRectangle(place);
            pictures.image(page).ifPresent(image -> draw(gc, image, place));
            gc.setForeground(tones.line());
            gc.drawRectangle(place.x - 1, place.y - 1, place.width + 1, place.height + 1);
        }
        if (canvas.isFocusControl()) {
            Point size = canvas.getSize();
            gc.setForeground(tones.accent());
            gc.drawRectangle(0, 0, Math.min(size.x, viewWidth()) - 1, Math.min(size.y, viewHeight()) - 1);
        }
    }

    private static void draw(GC gc, Image image, Rectangle place) {
        Rectangle bounds = image.getBounds();
        boolean exact = Math.abs(bounds.width - place.width) <= 1 && Math.abs(bounds.height - place.height) <= 1;
        if (exact) {
            gc.drawImage(image, place.x, place.y);
        } else {
            gc.setInterpolation(SWT.HIGH);
            gc.drawImage(image, 0, 0, bounds.width, bounds.height, place.x, place.y, place.width, place.height);
        }
    }

    private void key(Event event) {
        boolean control = (event.stateMask & SWT.MOD1) != 0;
        if (control) {
            zoomKey(event);
            return;
        }
        int step = viewHeight() - LINE;
        switch (event.keyCode) {
            case SWT.PAGE_DOWN -> scrollTo(left, top + step);
            case SWT.PAGE_UP -> scrollTo(left, top - step);
            case SWT.HOME -> scrollTo(left, 0);
            case SWT.END -> scrollTo(left, stack.height());
            case SWT.ARROW_DOWN -> scrollTo(left, top + LINE);
            case SWT.ARROW_UP -> scrollTo(left, top - LINE);
            case SWT.ARROW_LEFT -> scrollTo(left - LINE, top);
            case SWT.ARROW_RIGHT -> scrollTo(left + LINE, top);
            default -> event.doit = true;
        }
    }

    private void zoomKey(Event event) {
        switch (event.keyCode) {
            case '+', '=', SWT.KEYPAD_ADD -> zoomIn();
            case '-', SWT.KEYPAD_SUBTRACT -> zoomOut();
            case '0', SWT.KEYPAD_0 -> zoom(new Zoom.Fixed(1));
            case SWT.PAGE_DOWN -> goTo(currentPage() + 1);
            case SWT.PAGE_UP -> goTo(currentPage() - 1);
            case SWT.HOME -> goTo(0);
            case SWT.END -> goTo(pageCount());
            default -> event.doit = true;
        }
    }

    private void wheel(Event event) {
        if ((event.stateMask & SWT.MOD1) != 0) {
            event.doit = false;
            if (event.count > 0) {
                zoomIn();
            } else {
                zoomOut();
            }
        }
    }
}
