// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.plot.ui.ChartArea;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.workbench.session.DisplaySettings;

/** Opens the forecast in a bare shell and drives it as a user does. */
abstract class ForecastStage {
    /** The demo's networks are of like resistors, so that each takes the same share. */
    static final PartSharing LIKE_PARTS = ForecastStage::shares;

    @TempDir
    Path folder;

    HeatStage stage;
    private ForecastComposite view;

    @BeforeEach
    void setUp() {
        stage = new HeatStage(folder);
    }

    @AfterEach
    void tearDown() {
        stage.desk.setDisplay(DisplaySettings.USUAL);
        stage.close();
    }

    private static List<PartShare> shares(List<Part> stock, LoadBranch branch) {
        String[] names = branch.network().split("\\|\\||\\+");
        return Arrays.stream(names)
                .map(name -> new PartShare(
                        name,
                        branch.ohms(),
                        1.0 / names.length,
                        stock.stream()
                                .filter(part -> part.id().startsWith(name))
                                .findFirst()))
                .toList();
    }

    void show() {
        view = stage.show(parent -> new ForecastComposite(parent, stage.desk, LIKE_PARTS));
        stage.shell.layout(true);
        stage.settle();
    }

    /** Opens the demo, without its log, and waits for its forecast. */
    void open() throws Exception {
        stage.withProject().open();
        show();
        forecast();
    }

    /** Waits until the forecast of the project as it is stands in the table and on the strip, drawn. */
    void forecast() {
        // What is tried while something is dragged has the same order; it is not the project's forecast yet.
        stage.until("the plan is forecast", () -> view.upToDate() && ids().equals(planIds()));
        drawn();
    }

    void drawn() {
        boolean[] drawn = new boolean[1];
        chart().whenDrawn(() -> drawn[0] = true);
        stage.until("the chart is drawn", () -> drawn[0]);
    }

    List<String> planIds() {
        return stage.project().plan().stream().map(step -> step.id()).toList();
    }

    List<String> ids() {
        return strip().slots().stream().map(ScheduleSlot::id).toList();
    }

    void pace(UnaryOperator<Pacing> change) {
        stage.edit(project -> paced(project, change));
    }

    static Project paced(Project project, UnaryOperator<Pacing> change) {
        return project.withHeat(
                project.heat().withPacing(change.apply(project.heat().pacing())));
    }

    ScheduleStrip strip() {
        return stage.find("forecast.strip", ScheduleStrip.class);
    }

    ScheduleSlot slot(String id) {
        return strip().slots().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    ChartCanvas chart() {
        return stage.find("forecast.chart", ChartCanvas.class);
    }

    ChartArea area() {
        return chart().area().orElseThrow();
    }

    Table table() {
        return stage.find("forecast.table", Table.class);
    }

    /** Returns what stands in a cell, by the header of its column. */
    String cell(int row, String header) {
        for (int column = 0; column < table().getColumnCount(); column++) {
            if (table().getColumn(column).getText().startsWith(header)) {
                return table().getItem(row).getText(column);
            }
        }
        throw new IllegalArgumentException("header is " + header + "; it must be the beginning of a column's");
    }

    String summary() {
        return stage.find("forecast.summary", Label.class).getText();
    }

    String state() {
        return stage.find("forecast.state", Label.class).getText();
    }

    String message() {
        return stage.find("forecast.message", Label.class).getText();
    }

    String notes() {
        return stage.find("forecast.notes.list", Text.class).getText();
    }

    boolean offered(String id) {
        return stage.find(id, Button.class).getVisible();
    }

    Optional<String> undoName() {
        return stage.desk.session().orElseThrow().undoName();
    }

    void undo() {
        stage.desk.session().orElseThrow().undo();
        stage.settle();
    }

    /** Where on the strip the end of a rest can be taken. */
    int gripX(String id) {
        return (int) Math.round(strip().lanes().orElseThrow().toX(slot(id).startSeconds()));
    }

    int gripY() {
        return strip().lanes().orElseThrow().heights().gripsTop() + 5;
    }

    int stepX(String id) {
        return (int) Math.round(strip().lanes().orElseThrow().toX(slot(id).middleSeconds()));
    }

    int stepY() {
        return strip().lanes().orElseThrow().heights().gripsTop() - 5;
    }

    void press(int x, int y) {
        mouse(SWT.MouseDown, 1, x, y);
    }

    void move(int x, int y) {
        mouse(SWT.MouseMove, 0, x, y);
    }

    void release(int x, int y) {
        mouse(SWT.MouseUp, 1, x, y);
        stage.settle();
    }

    private void mouse(int type, int button, int x, int y) {
        Event event = new Event();
        event.x = x;
        event.y = y;
        event.button = button;
        strip().notifyListeners(type, event);
    }

    void key(int code) {
        key(code, 0);
    }

    void key(int code, int mask) {
        key(strip(), code, mask);
    }

    void key(Control control, int code, int mask) {
        Event event = new Event();
        event.keyCode = code;
        event.character = code < 0x100 ? (char) code : 0;
        event.stateMask = mask;
        control.notifyListeners(SWT.KeyDown, event);
        stage.settle();
    }

    /** Chooses a step as a click in the table does. */
    void choose(String id) {
        int row = ids().indexOf(id);
        table().setSelection(row);
        table().notifyListeners(SWT.Selection, new Event());
        stage.settle();
    }
}
