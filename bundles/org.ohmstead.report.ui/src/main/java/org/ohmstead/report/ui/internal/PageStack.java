// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.graphics.Rectangle;
import org.ohmstead.report.PageSize;

/** Where pages lie, one below the other and each in the middle, in points of the screen. */
final class PageStack {
    /** Around and between pages. */
    static final int GAP = 12;

    private static final double SCREEN_POINTS_PER_POINT = 96.0 / 72;

    private final double factor;
    private final List<Rectangle> places;
    private final int width;
    private final int height;

    private PageStack(double factor, List<Rectangle> places, int width, int height) {
        this.factor = factor;
        this.places = places;
        this.width = width;
        this.height = height;
    }

    /**
     * Lays pages out.
     *
     * @param pages their sizes
     * @param zoom how large
     * @param viewWidth width to show them in
     * @param viewHeight height to show them in
     */
    static PageStack of(List<PageSize> pages, Zoom zoom, int viewWidth, int viewHeight) {
        double factor = factor(pages, zoom, viewWidth, viewHeight);
        double scale = factor * SCREEN_POINTS_PER_POINT;
        int widest = 0;
        for (PageSize page : pages) {
            widest = Math.max(widest, (int) Math.round(page.widthPoints() * scale));
        }
        int width = Math.max(viewWidth, widest + 2 * GAP);
        List<Rectangle> places = new ArrayList<>();
        int top = GAP;
        for (PageSize page : pages) {
            int pageWidth = (int) Math.round(page.widthPoints() * scale);
            int pageHeight = (int) Math.round(page.heightPoints() * scale);
            places.add(new Rectangle((width - pageWidth) / 2, top, pageWidth, pageHeight));
            top += pageHeight + GAP;
        }
        return new PageStack(factor, List.copyOf(places), width, top);
    }

    private static double factor(List<PageSize> pages, Zoom zoom, int viewWidth, int viewHeight) {
        if (zoom instanceof Zoom.Fixed fixed) {
            return fixed.factor();
        }
        double widest = pages.stream().mapToDouble(PageSize::widthPoints).max().orElse(1);
        double tallest =
                pages.stream().mapToDouble(PageSize::heightPoints).max().orElse(1);
        double fits = (viewWidth - 2 * GAP) / (widest * SCREEN_POINTS_PER_POINT);
        if (zoom instanceof Zoom.FitPage) {
            fits = Math.min(fits, (viewHeight - 2 * GAP) / (tallest * SCREEN_POINTS_PER_POINT));
        }
        return Zoom.Fixed.near(fits).factor();
    }

    /** Returns the factor that the pages are shown at; 1 is the size on paper. */
    double factor() {
        return factor;
    }

    /** Returns points of the screen for each point of paper. */
    double scale() {
        return factor * SCREEN_POINTS_PER_POINT;
    }

    int count() {
        return places.size();
    }

    /** Returns where a page lies. */
    Rectangle place(int page) {
        Rectangle place = places.get(page);
        return new Rectangle(place.x, place.y, place.width, place.height);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Returns the page that is looked at: the last that begins above the upper third of what is seen. */
    int pageAt(int top, int viewHeight) {
        int line = top + viewHeight / 3;
        int at = 0;
        for (int page = 0; page < places.size(); page++) {
            if (places.get(page).y <= line) {
                at = page;
            }
        }
        boolean atEnd = top + viewHeight >= height && top > 0;
        return atEnd && !places.isEmpty() ? places.size() - 1 : at;
    }

    /** Returns the pages that are seen at least in part, with half a view more above and below. */
    List<Integer> near(int top, int viewHeight) {
        List<Integer> near = new ArrayList<>();
        int above = top - viewHeight / 2;
        int below = top + viewHeight + viewHeight / 2;
        for (int page = 0; page < places.size(); page++) {
            Rectangle place = places.get(page);
            if (place.y + place.height > above && place.y < below) {
                near.add(page);
            }
        }
        return near;
    }
}
