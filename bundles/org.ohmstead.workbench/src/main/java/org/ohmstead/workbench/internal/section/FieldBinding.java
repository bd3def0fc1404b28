// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.function.Function;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.form.Field;

/**
 * Ties a field to a value of the project.
 *
 * @param field on the page
 * @param where JSON path of the value
 * @param get reads the value
 * @param <T> the value
 */
record FieldBinding<T>(Field<T> field, String where, Function<Project, T> get) implements Binding {
    @Override
    public void showProject(Project project) {
        field.setValue(get.apply(project));
    }

    @Override
    public void showProblems(List<Problem> problems) {
        field.setRemark(problems.stream()
                .filter(problem -> problem.where().equals(where))
                .findFirst());
    }

    @Override
    public boolean reveal(ProjectPath place) {
        if (!place.text().equals(where)) {
            return false;
        }
        field.focus();
        return true;
    }

    @Override
    public void setReadOnly(boolean readOnly) {
        field.setReadOnly(readOnly);
    }
}
