// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.eclipse.swt.graphics.Rectangle;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.plot.ui.ViewWindow;

/**
 * What a chart canvas knows: source, window, hidden series, crosshair and the latest picture. Knows no widgets. UI
 * thread only.
 */
public final class ChartModel {
    private final List<Consumer<Optional<PlotReadOut>>> cursorListeners = new ArrayList<>();
    private final List<Consumer<ChosenPoint>> pointListeners = new ArrayList<>();
    private final List<DoubleConsumer> lineListeners = new ArrayList<>();
    private final Set<String> hidden = new HashSet<>();
    private final Runnable changed;
    private final Runnable repaint;
    private Optional<PlotSource> source = Optional.empty();
    private Optional<ViewWindow> window = Optional.empty();
    private Optional<Picture> picture = Optional.empty();
    private Optional<String> message = Optional.empty();
    private OptionalDouble cursor = OptionalDouble.empty();
    private Optional<ChosenPoint> pointed = Optional.empty();
    private Optional<PlotReadOut> readOut = Optional.empty();
    private ReadOutStyle style = ReadOutStyle.spoken();
    private OptionalDouble line = OptionalDouble.empty();
    private Optional<Rectangle> rubberBand = Optional.empty();

    /**
     * Makes an empty model.
     *
     * @param changed called when another picture may be needed
     * @param repaint called when only what lies over the picture changed
     */
    public ChartModel(Runnable changed, Runnable repaint) {
        this.changed = changed;
        this.repaint = repaint;
    }

    /** Shows the plots of the source. */
    public void show(PlotSource newSource, boolean keepWindow) {
        source = Optional.of(newSource);
        message = Optional.empty();
        pointed = Optional.empty();
        if (!keepWindow) {
            window = Optional.empty();
            setCursor(OptionalDouble.empty(), Optional.empty());
        }
        changed.run();
    }

    /** Shows a sentence instead of a plot. */
    public void showMessage(String sentence) {
        source = Optional.empty();
        picture = Optional.empty();
        window = Optional.empty();
        message = Optional.of(sentence);
        setCursor(OptionalDouble.empty(), Optional.empty());
        changed.run();
    }

    /** Returns the source. */
    public Optional<PlotSource> source() {
        return source;
    }

    /** Returns the sentence shown instead of a plot. */
    public Optional<String> message() {
        return message;
    }

    /** Returns what is in view. */
    public Optional<ViewWindow> window() {
        return window;
    }

    /** Returns the latest picture. */
    public Optional<Picture> picture() {
        return picture;
    }

    /** Takes a picture that has been drawn. */
    public void setPicture(Picture drawn) {
        if (source.isEmpty() || source.get() != drawn.request().source()) {
            return;
        }
        picture = Optional.of(drawn);
        setWindow(zoom(drawn).clamped(window));
        findReadOut();
        repaint.run();
    }

    /** Puts the window, as near as it is allowed, in view. */
    public void zoomTo(Optional<ViewWindow> wanted) {
        setWindow(current().map(drawn -> zoom(drawn).clamped(wanted)).orElse(wanted));
    }

    /** Zooms around a place given in values. */
    public void zoomAround(double x, double y, double factorX, double factorY) {
        current().ifPresent(drawn -> setWindow(zoom(drawn).zoomed(window, x, y, factorX, factorY)));
    }

    /** Moves the view by shares of its width and height. */
    public void move(double shareX, double shareY) {
        current().ifPresent(drawn -> setWindow(zoom(drawn).moved(window, shareX, shareY)));
    }

    /** Moves the view from where it was when a drag began. */
    public void moveFrom(Optional<ViewWindow> start, double shareX, double shareY) {
        current().ifPresent(drawn -> setWindow(zoom(drawn).moved(start, shareX, shareY)));
    }

    private Optional<Picture> current() {
        return picture.filter(drawn -> source.isPresent() && drawn.request().source() == source.get());
    }

    private static ViewZoom zoom(Picture drawn) {
        return new ViewZoom(
                drawn.home(), drawn.plot().x().scale(), drawn.plot().y().scale());
    }

    private void setWindow(Optional<ViewWindow> wanted) {
        if (!wanted.equals(window)) {
            window = wanted;
            changed.run();
        }
    }

    /** Returns the names of hidden series and bands. */
    public Set<String> hidden() {
        return hidden;
    }

    /** Shows or hides the series and bands of the name. */
    public void setVisible(String name, boolean visible) {
        if (visible ? hidden.remove(name) : hidden.add(name)) {
            changed.run();
        }
    }

    /** Puts the crosshair on x, or takes it away; {@code point} is the data point that is pointed at, if any. */
    public void setCursor(OptionalDouble x, Optional<ChosenPoint> point) {
        if (x.equals(cursor) && point.equals(pointed)) {
            return;
        }
        cursor = x;
        pointed = point;
        findReadOut();
        repaint.run();
    }

    /** Returns where the crosshair is. */
    public OptionalDouble cursor() {
        return cursor;
    }

    /** Returns the data point that is pointed at. */
    public Optional<ChosenPoint> pointed() {
        return pointed;
    }

    /** Returns the values under the crosshair. */
    public Optional<PlotReadOut> readOut() {
        return readOut;
    }

    /** Writes numbers otherwise. */
    public void setReadOutStyle(ReadOutStyle newStyle) {
        if (newStyle.equals(style)) {
            return;
        }
        boolean otherPicture = newStyle.decimalComma() != style.decimalComma();
        style = newStyle;
        findReadOut();
        if (otherPicture) {
            changed.run();
        } else {
            repaint.run();
        }
    }

    /** Returns whether numbers have a decimal comma instead of a point. */
    public boolean decimalComma() {
        return style.decimalComma();
    }

    private void findReadOut() {
        Optional<PlotReadOut> found = cursor.isPresent()
                ? current().map(drawn -> new ReadOutFinder(drawn, style).at(cursor.getAsDouble(), pointed))
                : Optional.empty();
        if (!found.equals(readOut)) {
            readOut = found;
            List.copyOf(cursorListeners).forEach(each -> each.accept(found));
        }
    }

    /** Returns the rectangle that the user draws for zooming, in unscaled pixels. */
    public Optional<Rectangle> rubberBand() {
        return rubberBand;
    }

    /** Shows the rectangle that the user draws, or none. */
    public void setRubberBand(Optional<Rectangle> band) {
        rubberBand = band;
        repaint.run();
    }

    /** Tells the listeners that the user clicked on a data point. */
    public void choose(ChosenPoint point) {
        List.copyOf(pointListeners).forEach(each -> each.accept(point));
    }

    /** Returns where the line stands that the user can drag. */
    public OptionalDouble line() {
        return line;
    }

    /** Puts the line that the user can drag on x, or takes it away; nobody is told. */
    public void setLine(OptionalDouble x) {
        if (!x.equals(line)) {
            line = x;
            repaint.run();
        }
    }

    /** Has the user move the line: to x, or as near as what is in view allows. */
    public void dragLine(double x) {
        current().ifPresent(drawn -> {
            double inside = Math.max(
                    drawn.layout().x().lower(), Math.min(drawn.layout().x().upper(), x));
            if (line.isPresent() && line.getAsDouble() != inside) {
                setLine(OptionalDouble.of(inside));
                List.copyOf(lineListeners).forEach(each -> each.accept(inside));
            }
        });
    }

    /** Adds a listener for the place of the line when the user moves it; the result takes it away. */
    public Runnable addLineListener(DoubleConsumer listener) {
        lineListeners.add(listener);
        return () -> lineListeners.remove(listener);
    }

    /** Adds a listener for the read-out; the result takes it away. */
    public Runnable addCursorListener(Consumer<Optional<PlotReadOut>> listener) {
        cursorListeners.add(listener);
        return () -> cursorListeners.remove(listener);
    }

    /** Adds a listener for clicks on data points; the result takes it away. */
    public Runnable addPointListener(Consumer<ChosenPoint> listener) {
        pointListeners.add(listener);
        return () -> pointListeners.remove(listener);
    }

    /** Returns the request for what is to be seen now, on an area and screen as given; empty without a source. */
    public Optional<Request> request(int width, int height, int zoomPercent, double pixelsOfPoint, ChartLook look) {
        return source.map(each -> new Request(each, window, width, height, zoomPercent, pixelsOfPoint, look, hidden)
                .withDecimalComma(style.decimalComma()));
    }
}
