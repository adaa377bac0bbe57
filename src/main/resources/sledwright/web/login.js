// What stands behind # is not sent, so the form takes it along: whoever had a link with wishes, or with a quote's number, is led there.
document.querySelector('.enter').action += location.hash;
