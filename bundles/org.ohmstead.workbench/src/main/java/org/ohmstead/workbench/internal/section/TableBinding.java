// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.table.CellMark;
import org.ohmstead.workbench.table.EditTable;
import org.ohmstead.workbench.table.Mark;

/**
 * Ties a table to a list of the project. The ids of its columns are the names of the fields in the file, or {@link PlaceWords} knows
 * which is whose, so that a problem finds its cell.
 *
 * @param table on the page
 * @param where JSON path of the list: {@code $.amplifier.ratings}
 * @param get reads the list
 * @param message says what is wrong with the list as a whole
 * @param <R> a row
 */
record TableBinding<R>(EditTable<R> table, String where, Function<Project, List<R>> get, NoteLine message)
        implements Binding {
    @Override
    public void showProject(Project project) {
        List<R> rows = get.apply(project);
        if (!rows.equals(table.rows())) {
            table.setRows(rows);
        }
    }

    @Override
    public void showDisplay(Project project) {
        table.refresh();
    }

    @Override
    public void showProblems(List<Problem> problems) {
        List<CellMark> marks = new ArrayList<>();
        Problem ofList = null;
        for (Problem problem : problems) {
            if (problem.where().equals(where)) {
                ofList = problem;
            } else if (problem.where().startsWith(where + "[")) {
                ProjectPath.parse(problem.where()).ifPresent(path -> marks.add(mark(path, problem)));
            }
        }
        table.setMarks(marks);
        if (ofList == null) {
            message.clear();
        } else {
            message.show(ofList.severity(), ofList.what() + " " + ofList.remedy());
        }
    }

    private CellMark mark(ProjectPath path, Problem problem) {
        int depth = depth();
        // What lies in a list within the row belongs to the cell of that list.
        String column = path.index(depth + 1) >= 0 ? path.name(depth + 1) : path.rest(depth + 1);
        return new CellMark(
                path.index(depth),
                PlaceWords.column(column),
                new Mark(problem.severity(), problem.what() + " " + problem.remedy()));
    }

    @Override
    public boolean reveal(ProjectPath place) {
        if (place.text().equals(where)) {
            table.setFocus();
            return true;
        }
        int index = place.text().startsWith(where + "[") ? place.index(depth()) : -1;
        if (index < 0 || place.index(depth() + 1) >= 0 || index >= table.rows().size()) {
            return false;
        }
        table.select(index, PlaceWords.column(place.rest(depth() + 1)));
        return true;
    }

    private int depth() {
        return ProjectPath.parse(where).orElseThrow().parts().size() - 1;
    }

    @Override
    public void setReadOnly(boolean readOnly) {
        table.setReadOnly(readOnly);
    }
}
