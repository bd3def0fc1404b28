// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.chart.ChartLook;

/** The row of toggles below the chart, one for each named series and band; wraps where it has no room. */
public final class LegendBar extends Composite {
    private final ChartModel model;
    private final Supplier<ChartLook> look;
    private List<LegendKey> keys = List.of();

    /**
     * Makes an empty row.
     *
     * @param look gives the colours of the moment
     */
    public LegendBar(Composite parent, ChartModel model, Supplier<ChartLook> look) {
        super(parent, SWT.NONE);
        this.model = model;
        this.look = look;
        RowLayout layout = new RowLayout(SWT.HORIZONTAL);
        layout.spacing = 2;
        layout.marginLeft = 8;
        layout.marginRight = 8;
        layout.marginTop = 0;
        layout.marginBottom = 6;
        setLayout(layout);
    }

    /** Shows the toggles of the plot; returns whether they are others than before. */
    public boolean show(Plot plot) {
        List<LegendKey> wanted = keysOf(plot);
        boolean others = !wanted.equals(keys);
        if (others) {
            keys = wanted;
            for (Control each : getChildren()) {
                each.dispose();
            }
            wanted.forEach(each -> new LegendToggle(this, model, each, look).setFont(getFont()));
            layout(); // the bar's own size may stay as it is, and with it the old places
        }
        for (Control each : getChildren()) {
            each.redraw();
        }
        return others;
    }

    @Override
    public void setFont(Font font) {
        super.setFont(font);
        for (Control each : getChildren()) {
            each.setFont(font);
        }
        layout();
    }

    /** Takes all toggles away; returns whether there were any. */
    public boolean clear() {
        boolean any = !keys.isEmpty();
        keys = List.of();
        for (Control each : getChildren()) {
            each.dispose();
        }
        return any;
    }

    /** Returns whether there is nothing to toggle. */
    public boolean isEmpty() {
        return keys.isEmpty();
    }

    private static List<LegendKey> keysOf(Plot plot) {
        Map<String, LegendKey> found = new LinkedHashMap<>();
        for (Series series : plot.series()) {
            if (!series.name().isBlank()) {
                found.putIfAbsent(series.name(), LegendKey.of(series));
            }
        }
        for (Band band : plot.bands()) {
            if (!band.name().isBlank()) {
                found.putIfAbsent(band.name(), LegendKey.of(band));
            }
        }
        return new ArrayList<>(found.values());
    }
}
