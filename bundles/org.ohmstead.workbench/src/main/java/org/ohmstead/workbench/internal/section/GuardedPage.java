// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.core.runtime.ISafeRunnable;
import org.eclipse.core.runtime.SafeRunner;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/**
 * A page of the project as the workbench asks it: whatever the page throws is kept from the others and told to the user. The platform
 * logs it too.
 */
final class GuardedPage implements SectionPage {
    private static final String ANY_ICON = "section";

    private final SectionPage page;
    private final String id;
    private final String name;
    private final int order;
    private final String iconName;
    private final String where;
    private Optional<String> failure = Optional.empty();

    /** Asks a page for what never changes. */
    GuardedPage(SectionPage page) {
        this.page = page;
        id = ask(page::id, page.getClass().getName());
        name = ask(page::name, page.getClass().getSimpleName());
        order = ask(page::order, Integer.MAX_VALUE);
        iconName = known(ask(page::iconName, ANY_ICON));
        where = ask(page::where, "");
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int order() {
        return order;
    }

    @Override
    public String iconName() {
        return iconName;
    }

    @Override
    public String summary(Project project) {
        return ask(() -> page.summary(project), Texts.text("page.failed.summary"));
    }

    @Override
    public List<SectionItem> items(Project project) {
        return ask(() -> List.copyOf(page.items(project)), List.of());
    }

    @Override
    public String where() {
        return where;
    }

    /** Returns the sentence of the last thing that the page threw, or empty. */
    Optional<String> failure() {
        return failure;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        int before = parent.getChildren().length;
        SectionControl made = ask(() -> page.create(parent, desk), null);
        if (made != null) {
            return made;
        }
        Control[] children = parent.getChildren();
        for (int index = before; index < children.length; index++) {
            children[index].dispose();
        }
        return new FailedPage(
                parent,
                name,
                failure.orElseGet(() -> Texts.text("page.failed.nothing")),
                page.getClass().getName());
    }

    private static String known(String iconName) {
        return GuardedPage.class.getResource("/icons/" + iconName + ".svg") == null ? ANY_ICON : iconName;
    }

    private <T> T ask(Question<T> question, T otherwise) {
        AtomicReference<T> answer = new AtomicReference<>();
        SafeRunner.run(new ISafeRunnable() {
            @Override
            public void run() {
                answer.set(question.answer());
            }

            @Override
            public void handleException(Throwable exception) {
                failure = Optional.of(sentence(exception));
            }
        });
        return answer.get() == null ? otherwise : answer.get();
    }

    private static String sentence(Throwable exception) {
        String message = exception.getMessage();
        String sentence =
                message == null || message.isBlank() ? exception.getClass().getSimpleName() : message.strip();
        return sentence.endsWith(".") ? sentence : sentence + ".";
    }

    /**
     * Something to ask a page.
     *
     * @param <T> what it answers
     */
    private interface Question<T> {
        T answer();
    }
}
