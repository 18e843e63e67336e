"""The question in the last line: its answer while it is typed, and what was left unanswered."""

from paddock_tui.screens.question import Question
from paddock_tui.widgets.board import Board
from paddock_tui.widgets.messages import Answered, BoardMessage, Completed, Declined, Recalled, Typed


class QuestionLine:
    """Asks one question at a time on a board. The texts of questions left with escape are offered again."""

    def __init__(self, board: Board) -> None:
        self._board = board
        self._recalled = 0
        self.question: Question | None = None
        self.unanswered: dict[str, str] = {}

    def ask(self, question: Question, text: str = "") -> None:
        """Ask for an answer; what was left unanswered there is offered again."""
        offered = not text
        text = text or self.unanswered.pop(question.words, "")
        self.question = question
        self._recalled = len(question.earlier)
        self._board.ask(question.words, text, offered=offered)
        self._board.preview(*question.said)
        if text and question.typed is not None:
            question.typed(text)

    def hears(self, message: BoardMessage) -> bool:
        """Take what was done with the question; whether the message was about it."""
        match message:
            case Typed():
                self.typed(message.text)
            case Answered():
                self.answered(message.text)
            case Completed():
                self.completed(message.text)
            case Recalled():
                self.recalled(message.by)
            case Declined():
                self.declined(message.text)
            case _:
                return False
        return True

    def typed(self, text: str) -> None:
        """Follow what is being typed."""
        if self.question is not None and self.question.typed is not None:
            self.question.typed(text)

    def answered(self, text: str) -> None:
        """Take the answer, or ask again with what is wrong with it."""
        question, self.question = self.question, None
        self._board.done()
        wrong = _answer(question, text) if question is not None else ""
        if wrong and question is not None:
            self.ask(question, text)
            self._board.refuse(wrong)

    def completed(self, text: str) -> None:
        """Complete the answer that is being typed, where the question knows how."""
        if self.question is not None and self.question.completed is not None:
            self._board.answer(self.question.completed(text))

    def recalled(self, by: int) -> None:
        """Put an earlier answer in place of the one that is being typed."""
        if self.question is not None and self.question.earlier:
            self._recalled = max(0, min(len(self.question.earlier) - 1, self._recalled + by))
            self._board.answer(self.question.earlier[self._recalled])

    def declined(self, text: str) -> None:
        """Leave the question unanswered."""
        question, self.question = self.question, None
        if question is None:
            return
        if text.strip() and question.offered and not question.confirms:
            self.unanswered[question.words] = text
        if question.typed is not None:
            question.typed("")
        if question.left is not None:
            question.left()
        self._board.say(question.declined)


def _answer(question: Question, text: str) -> str:
    if question.confirms and text.strip():
        return "enter alone, without a word, says yes; escape says no"
    return question.answered(text)
