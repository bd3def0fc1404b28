// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.lang.System.Logger.Level;
import java.util.Optional;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.TextLayout;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.units.text.Messages;

/** The area that shows the picture and what lies over it. Keeps the picture up to date with model, size and screen. */
public final class ChartPane extends Canvas {
    private static final System.Logger LOG = System.getLogger(ChartPane.class.getName());
    private static final int SMALLEST_WIDTH = 120;
    private static final int SMALLEST_HEIGHT = 80;
    private static final double CHART_FONT_SHARE = 0.92;
    private static final double CHART_POINTS = 10;
    private static final double POINTS_PER_INCH = 72;
    private static final double WIDEST_TEXT = 420;
    private static final int NOTICE_MILLISECONDS = 6000;
    private static final Messages TEXTS = Messages.of(ChartPane.class);

    private final ChartModel model;
    private final Runnable drawn;
    private final PicturePump pump;
    private final Font bold;
    private Optional<ChartLook> fixedLook = Optional.empty();
    private Optional<Request> asked = Optional.empty();
    private Optional<String> failure = Optional.empty();
    private Optional<String> notice = Optional.empty();
    private Optional<Image> image = Optional.empty();

    /** Makes a pane that calls {@code drawn} after each new picture. */
    public ChartPane(Composite parent, ChartModel model, Runnable drawn) {
        super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        this.model = model;
        this.drawn = drawn;
        this.pump = new PicturePump(getDisplay(), this::take, this::fail);
        this.bold = FontDescriptor.createFrom(getFont()).setStyle(SWT.BOLD).createFont(getDisplay());
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.Resize, event -> refresh());
        addListener(SWT.ZoomChanged, event -> refresh());
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.Dispose, event -> {
            pump.stop();
            image.ifPresent(Image::dispose);
            bold.dispose();
        });
        new PointerGestures(this, model);
        new KeyGestures(this, model);
        describe();
    }

    private void describe() {
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = spokenName();
            }
        });
        getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_GRAPHIC;
            }
        });
        model.addCursorListener(readOut -> getAccessible().sendEvent(ACC.EVENT_NAME_CHANGED, null));
    }

    /** Returns what a screen reader says: the heading of the plot and the values under the crosshair. */
    public String spokenName() {
        String title = failure.or(model::message).orElseGet(() -> model.picture()
                .map(picture -> picture.plot().title())
                .filter(text -> !text.isBlank())
                .orElseGet(() -> TEXTS.text("chart.unnamed")));
        return model.readOut()
                .map(PlotReadOut::sentence)
                .map(text -> TEXTS.text("chart.spoken", title, text))
                .orElse(title);
    }

    /** Draws in these colours whatever the surroundings are. */
    public void setLook(ChartLook look) {
        fixedLook = Optional.of(look);
        refresh();
        redraw();
    }

    /** Returns the colours in use. */
    public ChartLook look() {
        return fixedLook.orElseGet(
                () -> ChartLook.isDark(SwtColours.rgb(getParent().getBackground())) ? ChartLook.DARK : ChartLook.LIGHT);
    }

    /** Returns how many pictures were drawn so far. */
    public int picturesDrawn() {
        return pump.count();
    }

    /** Returns whether nothing is left to be drawn. */
    public boolean settled() {
        return !pump.busy() && asked.equals(wanted());
    }

    /** Returns how many unscaled pixels a point of the chart has, so that its texts suit those around it. */
    public double pixelsOfPoint() {
        double fontPixels =
                getFont().getFontData()[0].getHeight() * getDisplay().getDPI().y / POINTS_PER_INCH;
        return Math.max(1, fontPixels * CHART_FONT_SHARE / CHART_POINTS);
    }

    private Optional<Request> wanted() {
        Rectangle area = getClientArea();
        if (area.width < SMALLEST_WIDTH || area.height < SMALLEST_HEIGHT) {
            return Optional.empty();
        }
        return model.request(area.width, area.height, getMonitor().getZoom(), pixelsOfPoint(), look());
    }

    /** Asks for another picture if anything that it depends on has changed. */
    public void refresh() {
        Optional<Request> wanted = wanted();
        if (!wanted.equals(asked)) {
            asked = wanted;
            wanted.ifPresent(pump::ask);
        }
    }

    private void take(Picture picture, Image newImage) {
        failure = Optional.empty();
        image.ifPresent(Image::dispose);
        image = Optional.of(newImage);
        model.setPicture(picture);
        redraw();
        update();
        drawn.run();
    }

    private void fail(Throwable cause) {
        LOG.log(Level.ERROR, "A chart could not be drawn.", cause);
        failure = Optional.of(TEXTS.text("chart.failed", cause.getMessage()));
        redraw();
        drawn.run();
    }

    /** Shows a sentence for a few seconds at the lower edge. */
    public void showNotice(String sentence) {
        if (isDisposed()) {
            return;
        }
        notice = Optional.of(sentence);
        redraw();
        getDisplay().timerExec(NOTICE_MILLISECONDS, () -> {
            if (!isDisposed() && notice.equals(Optional.of(sentence))) {
                notice = Optional.empty();
                redraw();
            }
        });
    }

    /** Returns the sentence that is shown for a few seconds. */
    public Optional<String> notice() {
        return notice;
    }

    /** Fills the area with the ground of the chart. */
    public void fillGround(GC gc, Rectangle area) {
        gc.setBackground(SwtColours.of(look().background()));
        gc.fillRectangle(area);
    }

    private void paint(GC gc) {
        refresh(); // the theme may have changed while the chart was out of sight
        Rectangle area = getClientArea();
        fillGround(gc, area);
        Optional<String> sentence = failure.or(model::message).or(this::tooSmall);
        if (sentence.isPresent()) {
            paintSentence(gc, sentence.get(), area);
        } else if (model.source().isPresent() && model.picture().isPresent() && image.isPresent()) {
            gc.drawImage(image.get(), 0, 0);
            new OverlayPainter(gc, look(), bold).paint(model, model.picture().get());
        }
        notice.ifPresent(text -> paintNotice(gc, text, area));
        if (isFocusControl()) {
            gc.setForeground(SwtColours.of(look().tone(0)));
            gc.setLineWidth(1);
            gc.drawRectangle(1, 1, area.width - 3, area.height - 3);
        }
    }

    /** A picture from before would have another size and maybe the colours of another theme. */
    private Optional<String> tooSmall() {
        return model.source().isPresent() && wanted().isEmpty()
                ? Optional.of(TEXTS.text("chart.tooSmall"))
                : Optional.empty();
    }

    private void paintSentence(GC gc, String sentence, Rectangle area) {
        TextLayout text = new TextLayout(getDisplay());
        try {
            text.setText(sentence);
            text.setFont(getFont());
            text.setAlignment(SWT.CENTER);
            int width = (int) Math.min(WIDEST_TEXT, Math.max(1, area.width - 2 * 12));
            text.setWidth(width);
            gc.setForeground(SwtColours.of(look().mutedInk()));
            text.draw(gc, (area.width - width) / 2, (area.height - text.getBounds().height) / 2);
        } finally {
            text.dispose();
        }
    }

    private void paintNotice(GC gc, String sentence, Rectangle area) {
        int height = gc.textExtent(sentence).y + 8;
        gc.setBackground(SwtColours.of(look().background()));
        gc.fillRectangle(2, area.height - height - 2, area.width - 4, height);
        gc.setForeground(SwtColours.of(look().ink()));
        gc.drawText(sentence, 12, area.height - height + 2, true);
    }
}
